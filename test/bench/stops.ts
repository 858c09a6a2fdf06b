/**
 * Rules for where to stop, side by side: pulls by bend number, take-outs, what came out above the upper tolerance and within
 * it, the most pulls that one bend took; then the median times. `--quick` bends fewer tubes; a word runs the cases with it in their name.
 */
import { CASES } from './stops-cases.ts';
import { HEAD, linesOf } from './stops-lines.ts';
import { timings } from './stops-timing.ts';

const words = process.argv.slice(2).filter((arg) => !arg.startsWith('--'));
const quick = process.argv.includes('--quick');
const chosen = CASES.filter(({ name }) => words.length === 0 || words.some((word) => name.includes(word)));

console.log(HEAD);
for (const [i, each] of chosen.entries()) {
	console.error(`${i + 1} of ${chosen.length}: ${each.name}, ${Math.round(process.uptime())} s`);
	for (const line of linesOf(each, quick)) console.log(line);
}
if (words.length === 0) {
	const { update, decision } = timings();
	console.log(`update ${update.toFixed(2)} us, decision ${decision.toFixed(1)} us (medians)`);
}
