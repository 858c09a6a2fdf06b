/** What is counted of a case, as lines of a table. */

import { sumOf } from '../../src/maths/list.ts';
import type { Case } from './stops-cases.ts';
import { bestFirstStop } from './stops-first.ts';
import { tubeOracle } from './stops-oracle.ts';
import { type Count, partOver, type Risk, tally, together, upperBound } from './stops-tally.ts';

/** The bench's own: nothing was tuned on them. */
export const SEED = 20_311_000;

const COLUMNS: readonly [head: string, width: number][] = [
	['case', 34],
	['rule', 12],
	['earlier', 7],
	['pulls by bend', 24],
	['all', 5],
	['take-outs', 9],
	['over % by bend (99 % bound)', 52],
	['all', 11],
	['within %', 8],
	['most', 4],
	['again', 5],
];

function line(cells: readonly string[]): string {
	return cells
		.map((cell, i) => (i < 2 ? cell.padEnd(COLUMNS[i]![1]) : cell.padStart(COLUMNS[i]![1])))
		.join('  ')
		.trimEnd();
}

/** `most`: pulls on one bend; `again`: stops at or below one that was held before at the same bend. */
export const HEAD = line(COLUMNS.map(([head]) => head));

/** What is asked for at the command line. */
export interface Run {
	quick: boolean;
	seed: number;
}

/** All lines of a case, each as soon as it is known. */
export function* linesOf({ name, rules, trial, earlier, tubes, more }: Case, run: Run): Generator<string> {
	const { quick, seed } = run;
	const machines = quick ? Math.ceil(tubes / 20) : tubes;
	for (const [rule, make] of Object.entries(rules)) {
		// The oracle and the rules of thumb learn nothing that one earlier tube does not give.
		const watched = rule === 'oracle' ? earlier.slice(-1) : earlier;
		const counts = tally(make, trial, watched, machines, seed);
		for (const [i, before] of watched.entries()) yield line([name, rule, `${before}`, ...figures(counts[i]!)]);
		if (more === 'stated') yield* statedLines(byBend(counts));
		if (more === 'first' && rule === 'session') yield firstLine(trial, machines, seed);
		if (more === 'learner' && rule === 'session') {
			for (const [i, before] of watched.entries()) {
				yield* againstLearner(trial, together(counts[i]!), before, { machines, seed });
			}
		}
	}
}

function firstLine(trial: Case['trial'], machines: number, seed: number): string {
	const target = 'bends' in trial.angles ? trial.angles.low : trial.angles[0]!;
	const { within, over } = bestFirstStop(trial, target, machines, seed);
	return `  no first stop leaves more than ${percent(within)} % within, with ${percent(over)} % over`;
}

/** What was counted of several tubes of a machine, still by bend number. */
function byBend(tubes: readonly (readonly Count[])[]): Count[] {
	return tubes[0]!.map((_, at) => together(tubes.map((counts) => counts[at]!)));
}

const percent = (part: number) => (100 * part).toFixed(2);

function figures(counts: readonly Count[]): string[] {
	const all = together(counts);
	const { part, error } = partOver(all);
	const over = counts.map((c) => `${percent(partOver(c).part)} (${percent(upperBound(sumOf(c.over), c.bends))})`);
	return [
		counts.map((c) => (c.pulls / c.bends).toFixed(2)).join(' '),
		(all.pulls / all.bends).toFixed(2),
		(all.seats / all.bends).toFixed(2),
		over.join(' '),
		`${percent(part)} ± ${percent(error)}`,
		(100 * (all.within / all.bends)).toFixed(1),
		`${all.most}`,
		`${all.again}`,
	];
}

/** Upper ends of the bins of stated risk. */
const BINS = [0.002, 0.005, 0.01, 0.02, 0.04, 1];

/** `counts`: by bend number. */
function* statedLines(counts: readonly Count[]): Generator<string> {
	const { risks } = together(counts);
	const kinds = [
		{ label: 'stated', of: risks },
		{ label: 'first pulls, stated', of: risks.filter(({ first }) => first) },
	];
	for (const { label, of } of kinds) {
		for (const [i, high] of BINS.entries()) {
			const low = BINS[i - 1] ?? -1;
			yield* riskLine(
				`  ${label} up to ${percent(high)} %`,
				of.filter(({ stated }) => stated > low && stated <= high),
			);
		}
	}
	for (const [at, each] of counts.entries()) {
		yield* riskLine(
			`  first pulls of bend ${at + 1}`,
			each.risks.filter(({ first }) => first),
		);
	}
}

function* riskLine(label: string, risks: readonly Risk[]): Generator<string> {
	if (risks.length === 0) return;
	const stated = risks.reduce((sum, each) => sum + each.stated, 0) / risks.length;
	const part = risks.filter(({ over }) => over).length / risks.length;
	const error = Math.sqrt((part * (1 - part)) / risks.length);
	yield `${label.padEnd(34)}  ${risks.length} pulls: ${percent(stated)} stated, ${percent(part)} ± ${percent(error)} over`;
}

/** As near as the two risks must be for their pulls to be compared. */
const NEAR = 1.1;
const TRIES = 5;

/** The program's pulls over those of an oracle that knows machine and hands and learns the tube, asked for the risk that the program really took. */
function* againstLearner(
	trial: Case['trial'],
	ours: Count,
	before: number,
	{ machines, seed }: { machines: number; seed: number },
): Generator<string> {
	const share = partOver(ours).part;
	let asked = trial.risk;
	for (let i = 1; ; i++) {
		const [counts = []] = tally(tubeOracle, { ...trial, risk: asked }, [0], machines, seed);
		const all = together(counts);
		const taken = partOver(all).part;
		const apart = taken / share;
		if (i < TRIES && (apart > NEAR || apart < 1 / NEAR) && taken > 0) {
			asked = Math.min(0.5, asked / apart);
			continue;
		}
		yield line(['  tube learned by itself', 'oracle', '0', ...figures(counts)]);
		const ratio = (ours.pulls / ours.bends / (all.pulls / all.bends)).toFixed(3);
		yield `  after ${before} tubes ${ratio} times its pulls, over ${percent(share)} against ${percent(taken)} % (asked for ${percent(asked)})`;
		return;
	}
}
