/**
 * A filter for a tube that several dies bend. What belongs to the die at work stands where the model has it; what belongs to the others
 * waits behind all else, tied to it by what dies of one bender have in common. Tube, seat, bend and hands are the same on all. A filter for one die
 * is as if there were no others.
 */
import type { Gaussian } from '../maths/gaussian.ts';
import { type Filter, filterPrior } from './filter.ts';
import { covarianceOf, type Kin, MACHINE } from './kin.ts';
import { ANGLE, FRAME, type HeldDie, TUBE_PROPORTION } from './model.ts';

/** The first unknown of those that wait. */
const FIRST_WAITING = ANGLE + 1;

/** Where a die's unknowns of machine and material stand; `at`: its place among the filter's dies, 0 the one at work. */
const placesAt = (at: number): number[] =>
	at === 0 ? [...MACHINE] : MACHINE.map((_, i) => FIRST_WAITING + (at - 1) * MACHINE.length + i);

/** The same of the dies named, one after the other; a filter for one die knows that one whatever its name. */
export function placesOf({ dies }: Pick<Filter, 'dies'>, names: readonly string[]): number[] {
	if (dies === undefined) return placesAt(0);
	return names.flatMap((name) => placesAt(placeOfDie(dies, name)));
}

function placeOfDie(dies: readonly HeldDie[], name: string): number {
	const at = dies.findIndex((die) => die.name === name);
	if (at < 0) throw new RangeError(`die "${name}" is none of those that this filter knows`);
	return at;
}

/** Before anything was bent on any of these dies; the first is the one at work. `dialStep`: the dial's division, degrees. */
export function priorOn(kins: readonly Kin[], dialStep: number): Filter {
	const [own, ...others] = kins;
	const first = filterPrior(own!.k, dialStep);
	if (others.length === 0) return first;
	const dies = kins.map(({ die, k }): HeldDie => ({ name: die, back: k + FRAME.mean }));
	const size = FIRST_WAITING + others.length * MACHINE.length;
	const wide = (line: readonly number[]) => [...line, ...Array<number>(size - line.length).fill(0)];
	const mean = [...first.mean, ...others.flatMap(({ k }) => machineMean(k))];
	const cov = [...first.cov.map(wide), ...others.flatMap(() => MACHINE.map(() => wide([])))];
	return withMachines(
		{ ...first, mean, cov, dies },
		{ mean: kins.flatMap(({ k }) => machineMean(k)), cov: jointCovariance(kins, kins) },
	);
}

const machineMean = (k: number): number[] => {
	const { mean } = filterPrior(k);
	return MACHINE.map((i) => mean[i]!);
};

/** Covariance of the machine unknowns of some combinations, one after the other (rows), with those of others (columns), before any reading. */
export function jointCovariance(a: readonly Kin[], b: readonly Kin[]): number[][] {
	return a.flatMap((one) => {
		const blocks = b.map((other) => covarianceOf(one, other));
		return MACHINE.map((_, i) => blocks.flatMap((block) => block[i]!));
	});
}

/** `f` with these for machine and material, of all its dies in their order; all else independent of them. */
export function withMachines(f: Filter, machine: Gaussian): Filter {
	const { dies = [{ name: '' }] } = f;
	const places = dies.flatMap((_, at) => placesAt(at));
	const place = f.mean.map((_, i) => places.indexOf(i));
	return {
		...f,
		mean: f.mean.map((value, i) => machine.mean[place[i]!] ?? value),
		cov: f.cov.map((line, i) =>
			line.map((value, j) => {
				const [r, c] = [place[i]!, place[j]!];
				if (r >= 0 && c >= 0) return machine.cov[r]![c]!;
				return r < 0 && c < 0 ? value : 0;
			}),
		),
	};
}

/** The unknowns of machine and material of these dies alone: all else integrated out. */
export function machinesOf(f: Filter, names: readonly string[]): Gaussian {
	const places = placesOf(f, names);
	return { mean: places.map((i) => f.mean[i]!), cov: places.map((i) => places.map((j) => f.cov[i]![j]!)) };
}

/**
 * With this die in the machine. What is special about the tube is the same on every die, its part that grows with the angle as a part of what
 * springs back there.
 */
export function atDie(f: Filter, name: string): Filter {
	const { dies } = f;
	if (dies === undefined || dies[0]!.name === name) return f;
	const at = placeOfDie(dies, name);
	const [here, there] = [placesAt(0), placesAt(at)];
	const from = f.mean.map((_, i) => {
		if (here.includes(i)) return there[here.indexOf(i)]!;
		return there.includes(i) ? here[there.indexOf(i)]! : i;
	});
	const times = dies[at]!.back / dies[0]!.back;
	const scale = (i: number) => (i === TUBE_PROPORTION ? times : 1);
	return {
		...f,
		mean: from.map((i) => scale(i) * f.mean[i]!),
		cov: from.map((i) => from.map((j) => scale(i) * scale(j) * f.cov[i]![j]!)),
		dies: dies.map((die, i) => (i === 0 ? dies[at]! : i === at ? dies[0]! : die)),
	};
}
