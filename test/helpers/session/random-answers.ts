import type { Ask } from '../../../src/session/protocol/asks.ts';

/**
 * An answer to an ask, picked by `choice` (a whole number): usual ones, odd ones and wrong ones. `size` in [0, 1) sets how far a
 * reading lies from what was expected.
 */
export function randomAnswer(ask: Ask, choice: number, size: number): unknown {
	const usual = usualAnswers(ask, size);
	const any = [...usual, ...usual, ...usual, ...anywhere(ask, size)];
	return any[choice % any.length];
}

function usualAnswers(ask: Ask, size: number): unknown[] {
	switch (ask.ask) {
		case 'set':
			return [
				{ ready: true },
				{ ready: true, pointer: ask.pointer + 0.3 * (size - 0.5) },
				{ ready: true, mark: ask.mark.fromStart + size / 10, rotation: ask.rotation + size },
				{ ready: true, note: 'with a word' },
				{ plan: 'old' },
				{ plan: 'new' },
			];
		case 'pull':
			return [
				{ loaded: ask.stop },
				{ loaded: ask.stop + size, released: ask.expect.angle + 2 },
				{ loaded: ask.stop + 20 * size },
				{ reseat: true },
			];
		case 'measure': {
			const angle = Math.max(0, ask.expect.angle + 2 * size - 1);
			return [{ angle }, { angles: [angle, angle + size] }, { angle: angle + 40 * size }, { skip: true }];
		}
		case 'confirm':
			return [{ keep: true }, { reading: ask.expect.value + size / 10 }, { reading: ask.reading + size / 10 }];
		case 'check':
			return [
				{ reading: Math.abs(ask.expect.value + (size - 0.5) / 10) },
				{ reading: Math.abs(ask.expect.value) + 9 * size },
				{ skip: true },
			];
		case 'decide':
			return [{ do: 'accept' }, { do: 'accept' }, { do: ask.advice === 'pull' ? 'pull' : 'accept' }, { do: 'relieve' }];
	}
}

function anywhere(ask: Ask, size: number): unknown[] {
	const entry = 1 + Math.floor(size * Math.max(1, ask.entry - 1));
	const bend = 1 + Math.floor(3 * size);
	return [
		{ undo: true },
		{ note: 'a note' },
		{ amend: { entry, reading: 20 + size } },
		{ evidence: { kind: 'mark', bend, reading: 20 * bend + size } },
		{ evidence: { kind: 'leg', bend, reading: 19 + size } },
		{ evidence: { kind: 'rotation', bend, reading: size } },
		{ evidence: { kind: 'farEndToMark', bend, reading: 40 } },
		{ reopen: { bend, do: size < 0.5 ? 'pull' : 'relieve' } },
		{ what: 'is this' },
		{ loaded: 'x' },
		{ quit: true },
	];
}
