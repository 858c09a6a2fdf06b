/**
 * `npm run faults`: whole sessions, rescues, settings, job files, pages to print, the cache, export and import on a disk in memory that fails at every step in every way; then
 * real faults on real disks. Prints how many faults were put in; ends with 1 where anything acknowledged was lost, or anything else that is promised did not hold.
 */
import { type Tally, tryAll } from './all-faults.ts';
import { cacheSubject } from './cache-subject.ts';
import { exchangeSubject } from './exchange-subject.ts';
import { logSubject } from './log-subject.ts';
import { realFaults } from './real.ts';
import { sessionRecords } from './sessions.ts';
import { settingsSubject } from './settings-subject.ts';
import { jobSubject, paperSubject } from './whole-file-subject.ts';

/** Machines of the simulated shop that the sessions are bent on; none of them is used for tuning. */
const SEEDS = [41, 42, 43, 44];
const RECORDS = 12;
const FEW_RECORDS = 5;
/** Fewer would mean that a part of the way is not tried any more. */
const LEAST = 30_000;

const from = performance.now();
const tallies: Tally[] = [];
for (const [n, seed] of SEEDS.entries()) {
	const records = sessionRecords(seed, RECORDS);
	const rescue = n % 2 === 1;
	const name = `session ${seed}, ${records.length} lines${rescue ? ', another folder agreed on' : ''}`;
	tallies.push(await tryAll(logSubject(name, records, 4 + n, rescue), seed));
}
tallies.push(await tryAll(settingsSubject, 1), await tryAll(jobSubject, 2), await tryAll(cacheSubject, 3));
tallies.push(await tryAll(paperSubject, 5));
tallies.push(await tryAll(exchangeSubject(sessionRecords(SEEDS[0]!, FEW_RECORDS)), 4));

const sum = ({ faults }: Tally) => faults.errno + faults.partial + faults.cut;
for (const tally of tallies) {
	const { errno, partial, cut } = tally.faults;
	const kinds = `${errno} refusals, ${partial} cut writes, ${cut} power cuts`;
	console.log(`${tally.name}: ${tally.steps} steps, ${sum(tally)} faults (${kinds}), ${tally.broken.length} not held`);
}
const seed = Number(process.argv[2] ?? Date.now() % 100_000);
console.log(`seed ${seed}; the same moments again: npm run faults -- ${seed}`);
const real = await realFaults(seed);
const total = tallies.reduce((all, tally) => all + sum(tally), real.faults);
const broken = [...tallies.flatMap((tally) => tally.broken), ...real.broken];
console.log(
	`${total} faults in ${((performance.now() - from) / 1000).toFixed(1)} s, ${broken.length} promises not held`,
);
for (const each of broken.slice(0, 20)) console.error(each);
if (total < LEAST) console.error(`Only ${total} faults were put in: at least ${LEAST} are wanted.`);
process.exit(broken.length > 0 || total < LEAST ? 1 : 0);
