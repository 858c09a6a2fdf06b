import fc from 'fast-check';
import { it } from 'vitest';
import { type Fault, FaultFs } from '../helpers/disk/fault-fs.ts';
import { sample } from '../helpers/sample-size.ts';
import { expectKept, runSession } from './session-on-disk.ts';

const code = fc.constantFrom('ENOSPC', 'EDQUOT', 'EROFS', 'EIO');
const at = fc.integer({ min: 1, max: 90 });
const fault: fc.Arbitrary<Fault> = fc.oneof(
	fc.record({ kind: fc.constant('errno' as const), at, code, forGood: fc.boolean() }),
	fc.record({ kind: fc.constant('partial' as const), at, code, bytes: fc.nat({ max: 2000 }) }),
	fc.record({ kind: fc.constant('cut' as const), at }),
);
const sittings = fc.array(fc.array(fc.string({ unit: 'binary', maxLength: 900 }), { maxLength: 5 }), {
	minLength: 1,
	maxLength: 4,
});

it('any session, any fault, any power cut: what was acknowledged is read, nothing else, and the session goes on', () => {
	fc.assert(
		fc.property(
			sittings,
			fault,
			fc.array(fc.nat({ max: 5 }), { minLength: 1, maxLength: 40 }),
			(texts, fails, fates) => {
				const disk = new FaultFs(fails);
				const left = runSession(disk, texts);
				let next = 0;
				const after = disk.afterPowerCut((n) => fates[next++ % fates.length]! % n);
				expectKept(after, left, JSON.stringify(fails));
			},
		),
		{ numRuns: sample(200, 500) },
	);
});
