import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cornerMoves, cornersOf } from '../../src/fit/corner-motion.ts';
import { type Chain, walk } from '../../src/fit/kinematics.ts';
import { corners } from '../../src/tube/frames.ts';
import { anyTube } from '../helpers/shop/tubes.ts';

const at = (chain: Chain, first: number) => cornersOf(chain, walk(chain), first).flat();

it('corners lie where the frames have them, and go with each value as central differences say', () => {
	fc.assert(
		fc.property(anyTube({ bends: { min: 2, max: 6 } }), fc.nat(1), ({ straights, bends }, first) => {
			const of = (key: 'angle' | 'rotation' | 'radius') => bends.map((bend) => bend[key]);
			const chain = { straights, angles: of('angle'), rotations: of('rotation'), radii: of('radius') };
			const places = corners({ straights, bends }).slice(1 + first, -1);
			for (const [i, x] of at(chain, first).entries()) expect(x).toBeCloseTo(places.flat()[i]!, 8);
			const moves = cornerMoves(chain, walk(chain), first);
			for (const kind of ['straights', 'angles', 'rotations'] as const)
				for (const k of chain[kind].keys()) {
					const by = (step: number) => ({ ...chain, [kind]: chain[kind].map((v, i) => (i === k ? v + step : v)) });
					const [high, low] = [at(by(1e-4), first), at(by(-1e-4), first)];
					for (const [row, move] of moves.entries())
						for (let i = 0; i < 3; i++)
							expect(move[kind][3 * k + i]!).toBeCloseTo((high[3 * row + i]! - low[3 * row + i]!) / 2e-4, 5);
				}
		}),
		{ numRuns: 30 },
	);
});
