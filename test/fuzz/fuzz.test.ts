import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { corpusOf, type Subject } from './subject.ts';
import { SUBJECTS } from './subjects.ts';

/** As much of it as belongs to every run of the tests; `npm run fuzz` goes on as long as it is told. */
const MILLISECONDS = 1000;
const AT_ONCE = 2;

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
		const end = performance.now() + MILLISECONDS;
		// Some at least: on a busy machine the first alone may take as long. One that never covers two things ends by its time limit.
		do await fc.assert(property, { numRuns: AT_ONCE });
		while (performance.now() < end || covered.size < 2);
	});
});
