import type { Ask } from '../../../src/session/protocol/asks.ts';

/** What is answered where everything comes out as expected, the advice to pull followed and all else taken. */
export function asExpected(ask: Ask): object {
	switch (ask.ask) {
		case 'set':
			return { ready: true };
		case 'pull':
			return { loaded: ask.stop };
		case 'measure':
			return ask.readings === 2 ? { angles: [ask.expect.angle, ask.expect.angle] } : { angle: ask.expect.angle };
		case 'confirm':
			return { keep: true };
		case 'check':
			return { reading: ask.expect.value };
		case 'decide':
			return { do: ask.advice === 'pull' ? 'pull' : 'accept' };
	}
}
