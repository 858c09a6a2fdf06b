import type { Ask } from '../../../src/session/protocol/asks.ts';
import type { Shop } from './plain-shop.ts';

/** A simulated person at a simulated bender, answering asks as the line mode puts them. */
export interface Operator {
	answer(ask: Ask): Record<string, unknown>;
	/** True angles of the bends accepted so far, by bend number. */
	made: ReadonlyMap<number, number>;
}

/** `check` says what a check would read on the tube as it truly is; without it checks are skipped. */
export function operatorAt(shop: Shop, check?: (name: string, made: ReadonlyMap<number, number>) => number): Operator {
	const made = new Map<number, number>();
	let bend = 0;
	const again = (of: string): number => {
		if (of === 'loaded') return shop.loaded();
		if (of === 'released' || of === 'pointer') return shop.pointer();
		return shop.measure();
	};
	return {
		made,
		answer(ask) {
			switch (ask.ask) {
				case 'set':
					if (ask.seat > 1) shop.seat();
					else shop.newBend();
					bend = ask.bend;
					return { ready: true };
				case 'pull': {
					const { loadedKeyed, releasedKeyed } = shop.pull(ask.stop);
					return { loaded: loadedKeyed, released: releasedKeyed };
				}
				case 'measure':
					return ask.readings === 2 ? { angles: [shop.measure(), shop.measure()] } : { angle: shop.measure() };
				case 'confirm':
					if (ask.of === 'check' && check) return { reading: check(ask.name ?? '', made) };
					return { reading: again(ask.of) };
				case 'check':
					made.set(bend, shop.trueAngle());
					return check ? { reading: check(ask.name, made) } : { skip: true };
				case 'decide': {
					if (ask.advice === 'pull') return { do: 'pull' };
					// Earlier bends of a simulated tube are gone: only the one at work can be measured again.
					if (ask.advice === 'measure' && typeof ask.of === 'object' && ask.of.bend === ask.bend) {
						return { evidence: { kind: 'angle', bend: ask.bend, reading: shop.measure() } };
					}
					if (ask.advice === 'relieve') shop.relieve(ask.open ?? 0);
					if (ask.advice === 'relieve') return { do: 'relieve' };
					made.set(ask.bend, shop.trueAngle());
					return { do: 'accept' };
				}
			}
		},
	};
}
