/**
 * Whole sessions at simulated benders: whether what the program says of a pull, a bend, a check and the far end is so, and how often a
 * stated chance comes to be; for the first, second and fourth tube of a machine. Tables in Markdown on standard output, progress on standard error.
 * `--quick` bends few tubes; `--tubes N` so many a row; words choose the rows that have one of them in their job or world.
 */
import { ELSEWHERE, ROUGH } from '../../src/practice/other-shops.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { JOBS } from './calibration-jobs.ts';
import { bendTubes } from './calibration-session.ts';
import { markdown, type Row } from './calibration-table.ts';
import { Tally } from './calibration-tally.ts';

/** The bench's own: nothing was tuned on them. */
const SEED = 47_900_000;

const foreign = Object.values(ELSEWHERE);
/** The world of machine `m`: each machine of the foreign ones has the next law. */
const WORLDS: Readonly<Record<string, (m: number) => World>> = {
	usual: () => USUAL_SHOP,
	'free lag': () => ({ ...USUAL_SHOP, machine: { ...USUAL_SHOP.machine, lagShare: null, lag: [-1, 2] } }),
	'foreign laws': (m) => foreign[m % foreign.length]!,
	rough: () => ROUGH,
};
const WATCHED = ['first', 'second', null, 'fourth'] as const;

const args = process.argv.slice(2);
const many = args.indexOf('--tubes');
const tubes = many >= 0 ? Number(args[many + 1]) : args.includes('--quick') ? 8 : 500;
const words = args.filter((arg, i) => !arg.startsWith('--') && (many < 0 || i !== many + 1));

const rows: Row[] = [];
for (const job of JOBS) {
	for (const [world, of] of Object.entries(WORLDS)) {
		if (words.length > 0 && !words.some((word) => `${job.name} ${world}`.includes(word))) continue;
		const tallies = WATCHED.map((tube) => (tube === null ? null : new Tally()));
		for (let m = 0; m < tubes; m++) {
			bendTubes(job, of(m), SEED + m, tallies);
			if ((m + 1) % 10 === 0) {
				console.error(`${job.name}, ${world}: ${m + 1} of ${tubes} machines, ${Math.round(process.uptime())} s`);
			}
		}
		for (const [i, tally] of tallies.entries()) {
			if (tally) rows.push({ job: job.name, world, tube: WATCHED[i]!, tally });
		}
	}
}
console.log(markdown(rows));
