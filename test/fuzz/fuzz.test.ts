import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { corpusOf, type Subject } from './subject.ts';
import { SUBJECTS } from './subjects.ts';

/** As much of it as belongs to every run of the tests; `npm run fuzz` goes on as long as it is told. */
const MILLISECONDS = 1000;

describe.each(SUBJECTS.map((subject) => [subject.name, subject] as const))('%s', (_, subject: Subject<unknown>) => {
	it('hold by every case that once did not', async () => {
		for (const given of corpusOf(subject))
			await expect(Promise.resolve(subject.holds(given, () => {}))).resolves.toBeUndefined();
	});

	it(`hold by whatever comes in ${MILLISECONDS / 1000} s`, async () => {
		const covered = new Set<string>();
		const property = fc.asyncProperty(subject.cases, async (given) =>
			subject.holds(given, (what) => covered.add(what)),
		);
		await fc.assert(property, { numRuns: Number.POSITIVE_INFINITY, interruptAfterTimeLimit: MILLISECONDS });
		expect(covered.size).toBeGreaterThan(1);
	});
});
