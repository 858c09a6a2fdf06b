/**
 * `npm run fuzz SECONDS [SUBJECT]`: gives every reader of what comes from outside cases made by chance, for so many seconds in all, and says what they
 * covered. A case that does not hold is made as small as it goes, kept in the corpus, and ends the run with exit code 1.
 */
import { appendFileSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import fc from 'fast-check';
import { corpusPath, type Subject } from './subject.ts';
import { SUBJECTS } from './subjects.ts';

const [seconds = '60', only] = process.argv.slice(2);
if (!(Number(seconds) > 0)) throw new RangeError(`The seconds to run for are a number above 0, not "${seconds}".`);
const subjects = SUBJECTS.filter(({ name }) => only === undefined || name === only);
if (subjects.length === 0)
	throw new RangeError(`No subject is called "${only}": ${SUBJECTS.map(({ name }) => name).join(', ')}.`);

for (const subject of subjects) await run(subject, (Number(seconds) * 1000) / subjects.length);

async function run<Case>(subject: Subject<Case>, milliseconds: number): Promise<void> {
	const covered = new Map<string, number>();
	let cases = 0;
	const property = fc.asyncProperty(subject.cases, async (given) => {
		cases++;
		await subject.holds(given, (what) => covered.set(what, (covered.get(what) ?? 0) + 1));
	});
	const found = await fc.check(property, { numRuns: Number.POSITIVE_INFINITY, interruptAfterTimeLimit: milliseconds });
	console.log(`${subject.name}: ${cases} cases, seed ${found.seed}`);
	for (const [what, times] of [...covered].sort(([a], [b]) => a.localeCompare(b))) console.log(`  ${what}: ${times}`);
	if (found.counterexample === null) return;
	const [given] = found.counterexample;
	const line = JSON.stringify(subject.kept?.(given) ?? given);
	mkdirSync(dirname(corpusPath(subject.name)), { recursive: true });
	appendFileSync(corpusPath(subject.name), `${line}\n`);
	console.log(`does not hold, kept in ${corpusPath(subject.name)}:\n${line}\n${String(found.errorInstance)}`);
	process.exitCode = 1;
}
