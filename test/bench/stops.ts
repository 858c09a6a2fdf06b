/**
 * Rules for where to stop, side by side: pulls by bend number, take-outs, what came out above the upper tolerance and within
 * it; then the median times. Seeds are the bench's own: nothing was tuned on them. `--quick` bends fewer tubes.
 */
import { FOREIGN } from '../../src/practice/foreign.ts';
import { USUAL, type World } from '../../src/practice/world.ts';
import { oracle } from './stops-oracle.ts';
import { session } from './stops-session.ts';
import type { Rule, Station } from './stops-station.ts';
import { type Count, type Trial, tally, together, upperBound } from './stops-tally.ts';
import { carryOver, creep } from './stops-thumb.ts';
import { timings } from './stops-timing.ts';

const SEED = 20_311_000;
const quick = process.argv.includes('--quick');

const HEAD = [
	'case',
	'rule',
	'earlier',
	'pulls by bend',
	'all',
	'take-outs',
	'over % by bend (99 % bound)',
	'all',
	'within %',
];
const WIDTHS = [26, 10, 7, 24, 5, 9, 52, 5, 8];

function row(cells: readonly string[]): void {
	console.log(
		cells
			.map((cell, i) => (i < 2 ? cell.padEnd(WIDTHS[i]!) : cell.padStart(WIDTHS[i]!)))
			.join('  ')
			.trimEnd(),
	);
}

type Rules = Readonly<Record<string, (station: Station) => Rule>>;

function compare(name: string, rules: Rules, trial: Omit<Trial, 'earlier'>, earlier: readonly number[], tubes: number) {
	for (const [rule, make] of Object.entries(rules)) {
		// The oracle and the rules of thumb learn nothing that one earlier tube does not give.
		for (const before of rule === 'oracle' ? [earlier.at(-1) ?? 0] : earlier) {
			const counts = tally(make, { ...trial, earlier: before }, quick ? Math.ceil(tubes / 20) : tubes, SEED);
			row([name, rule, `${before}`, ...figures(counts)]);
		}
	}
}

function figures(counts: readonly Count[]): string[] {
	const all = together(counts);
	const percent = (part: number) => (100 * part).toFixed(2);
	const over = counts.map((c) => `${percent(c.over / c.bends)} (${percent(upperBound(c.over, c.bends))})`);
	return [
		counts.map((c) => (c.pulls / c.bends).toFixed(2)).join(' '),
		(all.pulls / all.bends).toFixed(2),
		(all.seats / all.bends).toFixed(2),
		over.join(' '),
		percent(all.over / all.bends),
		(100 * (all.within / all.bends)).toFixed(1),
	];
}

const even = (limit: number, world: World = USUAL) => ({
	world,
	tolerance: { under: limit, over: limit },
	risk: 0.02,
	angles: null,
});
const low = { world: USUAL, tolerance: { under: 0.5, over: 0.25 }, angles: [14, 31, 17] };
const ours = { session, oracle };

row(HEAD);
compare('even .5', { creep, 'carry-over': carryOver }, even(0.5), [0, 3], 2000);
compare('even .5', { session }, even(0.5), [0, 1], 4000);
compare('even .5', ours, even(0.5), [3], 20_000);
compare('even .5', { session }, even(0.5), [10], 1500);
compare('even 1.0', ours, even(1), [0, 3], 4000);
for (const risk of [0.05, 0.1]) {
	compare(`under .5 over .25 risk ${risk}`, ours, { ...low, risk }, [0, 3], 4000);
	// As much as history can ever give: what is then still missing to the oracle is what no reading of an earlier tube tells of this one.
	compare(`under .5 over .25 risk ${risk}`, { session }, { ...low, risk }, [60], 600);
	// What counts is how far past: the same bends, counted above half a degree over.
	compare(`  the same, above +.5`, ours, { ...low, risk, counted: 0.5 }, [0, 3], 4000);
}
const rough = { ...USUAL, operator: { ...USUAL.operator, stopping: 0.3 } };
const hasty = { ...even(0.5, rough), angles: low.angles };
compare('stop .3, 14 31 17', { session }, hasty, [0], 4000);
// As near to its limits as this comes, chance should not decide.
compare('stop .3, 14 31 17', ours, hasty, [3], 12_000);
compare('stop .3, 14 31 17', { session }, hasty, [10], 1500);
for (const [name, world] of Object.entries(FOREIGN)) compare(name, ours, even(0.5, world), [3], 3000);
const careless = { ...USUAL, blunders: { off: 0.06, swapped: 0.03 } };
compare('blunders x3', ours, even(0.5, careless), [3], 6000);
const silent = { ...USUAL, operator: { ...USUAL.operator, pointer: 'leaves' as const } };
compare('pointer not read', ours, even(0.5, silent), [3], 3000);
const { update, decision } = timings();
console.log(`update ${update.toFixed(2)} us, decision ${decision.toFixed(1)} us (medians)`);
