/**
 * The best that can be said of which one number told or read of a tube is wrong, when exactly one is, by 4 to 12 of its own errors, each as likely:
 * the likelihood of all that was read with each of them wrong by each amount. Written apart from the program's: its own walk of the tube,
 * slopes by differences, one normal distribution of what the checks miss.
 */
import { inverse } from '../../src/maths/cholesky.ts';
import { builtByAll } from '../../src/session/estimate/estimate.ts';
import type { State } from '../../src/session/log/state.ts';
import { checkValue } from '../../src/tube/checks.ts';
import type { Check } from '../../src/tube/job.ts';

export interface Named {
	kind: 'angle' | 'check' | 'mark' | 'rotation';
	bend?: number;
	name?: string;
}

export interface Best {
	first: Named;
	/** Its part of the likelihood of all. */
	share: number;
	/** Logarithm of how much likelier all is with it wrong than with nothing wrong. */
	evidence: number;
}

interface Unknown {
	of: Named | null;
	value: number;
	sd: number;
}

const SIZES = [4, 5, 6, 7, 8, 9, 10, 11, 12];
const STEP = 1e-3;

export const isSame = (a: Named, b: Named): boolean =>
	a.kind === b.kind && (a.kind === 'check' ? a.name === b.name : a.bend === b.bend);

/** `but`: what was read again already, and is right. */
export function bestOf(state: State, but: readonly Named[] = []): Best | null {
	const { input } = builtByAll(state);
	const checks = input.readings.filter(({ check }) => check);
	if (checks.length === 0) return null;
	const unknowns = unknownsOf(input);
	const reads = (x: readonly number[]) => checks.map(({ name }) => readOn(state, x, checkOf(state, name)));
	const told = unknowns.map(({ value }) => value);
	const at = reads(told);
	const slopes = unknowns.map(({ sd }, k) => {
		const by = STEP * sd;
		const [up, down] = [1, -1].map((sign) => reads(told.map((v, i) => (i === k ? v + sign * by : v))));
		return up!.map((value, i) => (value - down![i]!) / (2 * by));
	});
	const miss = checks.map(({ value }, i) => value - at[i]!);
	const spread = checks.map((_, i) =>
		checks.map((__, j) =>
			unknowns.reduce(
				(sum, { sd }, k) => sum + slopes[k]![i]! * slopes[k]![j]! * sd ** 2,
				i === j ? checks[i]!.sd ** 2 : 0,
			),
		),
	);
	const precision = inverse(spread);
	const likelihood = (shift: readonly number[]) => {
		const left = miss.map((value, i) => value - shift[i]!);
		return -0.5 * left.reduce((sum, a, i) => sum + left.reduce((row, b, j) => row + a * b * precision[i]![j]!, 0), 0);
	};
	const sized = (shift: (size: number) => number[]) => {
		const each = SIZES.flatMap((size) => [likelihood(shift(size)), likelihood(shift(-size))]);
		const most = Math.max(...each);
		return most + Math.log(each.reduce((sum, one) => sum + Math.exp(one - most), 0) / each.length);
	};
	const found = [
		...unknowns.flatMap(({ of, sd }, k) =>
			of === null ? [] : [{ of, likely: sized((size) => slopes[k]!.map((slope) => slope * sd * size)) }],
		),
		...checks.map(({ name, sd }, i) => ({
			of: { kind: 'check', name } as Named,
			likely: sized((size) => checks.map((_, j) => (i === j ? sd * size : 0))),
		})),
	]
		.filter((each) => !but.some((known) => isSame(each.of, known)))
		.toSorted((a, b) => b.likely - a.likely);
	const [first] = found;
	const all = found.reduce((sum, { likely }) => sum + Math.exp(likely - first!.likely), 0);
	return { first: first!.of, share: 1 / all, evidence: first!.likely - likelihood(miss.map(() => 0)) };
}

type Input = ReturnType<typeof builtByAll>['input'];

function unknownsOf({ bends, tooling }: Input): Unknown[] {
	const named = bends.flatMap(({ mark, angle, rotation }, i): Unknown[] => [
		{ of: mark ? { kind: 'mark', bend: i + 1 } : null, value: mark?.value ?? 0, sd: mark?.sd ?? 1 },
		{ of: { kind: 'angle', bend: i + 1 }, ...angle },
		{ of: i === 0 ? null : { kind: 'rotation', bend: i + 1 }, ...rotation },
		{ of: null, value: 0, sd: tooling.bendSpread },
	]);
	return [...named, { of: null, value: 0, sd: tooling.dieSpread }, { of: null, ...tooling.stretch }];
}

/** What a check reads on the tube that these numbers make: each arc takes its length, less the stretch, of the raw tube. */
function readOn(state: State, x: readonly number[], check: Check): number {
	const { job } = state.start;
	const count = (x.length - 2) / 4;
	const [die, stretch] = [x.at(-2)!, x.at(-1)!];
	let end = 0;
	const straights: number[] = [];
	const arcs = Array.from({ length: count }, (_, i) => {
		const [mark, angle, rotation, own] = x.slice(4 * i, 4 * i + 4) as [number, number, number, number];
		const radius = state.design.radii[0]! * Math.exp(die + own);
		straights.push(mark + job.tooling.markOffset - end);
		end = mark + job.tooling.markOffset + (radius * angle * Math.PI) / 180 / (1 + stretch);
		return { angle, rotation, radius };
	});
	return checkValue(check, { straights: [...straights, state.piece - end], bends: arcs }, job.tube);
}

function checkOf(state: State, name: string): Check {
	const found = state.start.job.checks.find((check) => check.name === name);
	if (!found) throw new RangeError(`the job has no check called "${name}"`);
	return found;
}
