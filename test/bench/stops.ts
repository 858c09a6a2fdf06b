/**
 * Rules for where to stop, side by side: pulls by bend number, take-outs, what came out above the upper tolerance and within
 * it, the most pulls that one bend took; then the median times. `--quick` bends fewer tubes; a word runs the cases with it in their name.
 * `--seed N`: other machines than the bench's own. `--bounds`: beside what no rule can beat, those cases only whose limit was missed.
 */
import { BOUNDED, boundLines } from './stops-bound-lines.ts';
import { CASES } from './stops-cases.ts';
import { HEAD, linesOf, SEED } from './stops-lines.ts';
import { timings } from './stops-timing.ts';

const args = process.argv.slice(2);
const seedAt = args.indexOf('--seed');
const words = args.filter((arg, i) => !arg.startsWith('--') && (seedAt < 0 || i !== seedAt + 1));
const run = { quick: args.includes('--quick'), seed: seedAt < 0 ? SEED : Number(args[seedAt + 1]) };
const chosen = CASES.filter(({ name }) => words.length === 0 || words.some((word) => name.includes(word)));

const bounds = args.includes('--bounds');
const cases = bounds ? chosen.filter(({ name }) => BOUNDED.includes(name)) : chosen;

if (!bounds) console.log(HEAD);
for (const [i, each] of cases.entries()) {
	console.error(`${i + 1} of ${cases.length}: ${each.name}, ${Math.round(process.uptime())} s`);
	for (const line of bounds ? boundLines(each, run) : linesOf(each, run)) console.log(line);
}
if (words.length === 0 && !bounds) {
	const { update, decision } = timings();
	console.log(`update ${update.toFixed(2)} us, decision ${decision.toFixed(1)} us (medians)`);
}
