/** What kept sessions teach: each leaves a lesson, and the lessons of a shop are the prior of its next session. */
import { type Filter, filterPrior, newTube } from './filter.ts';
import type { Gaussian } from './gaussian.ts';
import { type Member, posterior, type Told } from './hierarchy.ts';
import { covarianceOf, isSame, type Kin, MACHINE, nearness, sharedLevels } from './kin.ts';
import { eigen, inverse, times } from './linear.ts';

export type { Kin };

/** Squared deviations and how many there are: tallies of several sessions add up. */
export interface Tally {
	sum: number;
	count: number;
}

/** What one session's readings say of machine and material, and of how far readings scatter. Plain JSON. */
export interface Lesson extends Told {
	kin: Kin;
	/** When the session began, ISO time, and its id. */
	at: string;
	session: string;
	pulls: number;
	readings: number;
	information: number[][];
	vector: number[];
	scatter: { readings: Tally };
}

/** Along a direction that tells no more than this part of the best one, only rounding speaks. */
const ROUNDING = 1e-9;

/**
 * What was learned between two states of the filter: the quotient of two normal distributions, with what is this tube's own
 * integrated out. Where a robust update has left the machine less known than before, nothing was learned.
 */
export function lessonFrom(
	kin: Kin,
	start: Filter,
	end: Filter,
	about: { at: string; session: string; pulls: number; readings: number },
): Lesson {
	const [before, after] = [machineOf(start), machineOf(end)];
	const [loose, tight] = [inverse(before.cov), inverse(after.cov)];
	const gain = tight.map((line, i) => line.map((value, j) => value - loose[i]![j]!));
	const pull = times(
		tight,
		after.mean.map((mean, i) => mean - before.mean[i]!),
	);
	const all = eigen(gain);
	const least = ROUNDING * Math.max(...all.map(({ value }) => Math.abs(value)));
	const axes = all.filter(({ value }) => value > least);
	const information = MACHINE.map((_, i) =>
		MACHINE.map((_unknown, j) => axes.reduce((sum, { value, vector }) => sum + value * vector[i]! * vector[j]!, 0)),
	);
	const moved = axes.map(({ vector }) => vector.reduce((sum, x, i) => sum + x * pull[i]!, 0));
	const held = times(information, before.mean);
	const vector = held.map((value, i) => axes.reduce((sum, axis, n) => sum + axis.vector[i]! * moved[n]!, value));
	return { kin, ...about, information, vector, scatter: { readings: between(tallyOf(start), tallyOf(end)) } };
}

/** Whether anything at all was learned. */
export function teaches({ information, scatter }: Lesson): boolean {
	return scatter.readings.count > 0 || information.some((line, i) => line[i]! > 0);
}

export interface Count {
	sessions: number;
	pulls: number;
}

/** What near kin have in common with the combination asked for, the most first. */
export type Sharing = 'bender and die' | 'bender' | 'tube' | 'material' | 'nothing';
const SHARING: readonly Sharing[] = ['bender and die', 'bender', 'tube', 'material', 'nothing'];

/** What a prior rests on. `exact`: the same bender, die, tube size and material. */
export interface Provenance {
	exact: Count;
	/** Only those that there are, in the order of `Sharing`. */
	near: readonly (Count & { shares: Sharing })[];
}

/** More combinations than these hardly add anything, and the time grows with their cube. */
const MOST_KIN = 24;
/** A shop's scatter counts as at most this many readings, so that another operator is soon known too. */
const MOST_READINGS = 100;

/**
 * Springback to expect of `kin` before the first pull, from `cold` (what is expected without any history) and all lessons:
 * those of the same combination as if one session had gone on, those of near kin as far as they share causes.
 */
export function learned(kin: Kin, cold: Filter, lessons: readonly Lesson[]): { prior: Filter; from: Provenance } {
	const all = familiesOf(lessons);
	const near = nearest(kin, all);
	const from = provenance(kin, near);
	if (near.length === 0) return { prior: cold, from };
	const machine = posterior({ who: kin, mean: machineOf(cold).mean }, members(kin, near), covarianceOf);
	return { prior: newTube({ ...cold, ...withMachine(cold, machine), ...scatterOf(cold, all) }), from };
}

/** All lessons of one combination. */
interface Family {
	kin: Kin;
	sessions: number;
	pulls: number;
	told: { information: number[][]; vector: number[] };
	scatter: Tally;
}

function familiesOf(lessons: readonly Lesson[]): Family[] {
	// By die first: that is quick to look up, and few combinations have one in common.
	const byDie = new Map<string, Family[]>();
	for (const lesson of lessons) {
		const { kin } = lesson;
		const families = byDie.get(kin.die) ?? [];
		if (families.length === 0) byDie.set(kin.die, families);
		let family = families.find((known) => isSame(known.kin, kin));
		if (!family) {
			family = familyOf(kin);
			families.push(family);
		}
		add(family, lesson);
	}
	return [...byDie.values()].flat();
}

function familyOf(kin: Kin): Family {
	const told = { information: MACHINE.map(() => MACHINE.map(() => 0)), vector: MACHINE.map(() => 0) };
	return { kin: { ...kin, k: 0 }, sessions: 0, pulls: 0, told, scatter: { sum: 0, count: 0 } };
}

function add(family: Family, { kin, pulls, information, vector, scatter }: Lesson): void {
	family.sessions += 1;
	family.pulls += pulls;
	// The mean: a yield strength may have been corrected under the same name.
	family.kin.k += (kin.k - family.kin.k) / family.sessions;
	family.scatter.sum += scatter.readings.sum;
	family.scatter.count += scatter.readings.count;
	const { told } = family;
	for (let i = 0; i < MACHINE.length; i++) {
		told.vector[i]! += vector[i]!;
		const [line, more] = [told.information[i]!, information[i]!];
		for (let j = 0; j < MACHINE.length; j++) line[j]! += more[j]!;
	}
}

/** The nearest first; among equals the best known, and then by name, so that the order of the lessons never matters. */
function nearest(kin: Kin, families: readonly Family[]): Family[] {
	return families
		.map((family) => ({ family, near: nearness(kin, family.kin), pulls: family.pulls }))
		.sort((a, b) => b.near - a.near || b.pulls - a.pulls || (nameOf(a.family) < nameOf(b.family) ? -1 : 1))
		.slice(0, MOST_KIN)
		.map(({ family }) => family);
}

function nameOf({ kin: { bender, die, material, od, wall, clr } }: Family): string {
	return JSON.stringify([bender, die, material, od, wall, clr]);
}

function members(kin: Kin, families: readonly Family[]): Member<Kin>[] {
	return families.map((family) => {
		const who = isSame(kin, family.kin) ? kin : family.kin;
		return { who, mean: machineOf(filterPrior(who.k)).mean, told: family.told };
	});
}

function provenance(kin: Kin, families: readonly Family[]): Provenance {
	const exact = families.filter((family) => isSame(kin, family.kin));
	const others = families.filter((family) => !isSame(kin, family.kin));
	const near = SHARING.map((shares) => ({
		shares,
		...counted(others.filter((family) => sharing(kin, family.kin) === shares)),
	}));
	return { exact: counted(exact), near: near.filter(({ sessions }) => sessions > 0) };
}

function counted(families: readonly Family[]): Count {
	const sum = (of: (family: Family) => number) => families.reduce((total, family) => total + of(family), 0);
	return { sessions: sum(({ sessions }) => sessions), pulls: sum(({ pulls }) => pulls) };
}

function sharing(a: Kin, b: Kin): Sharing {
	const levels = sharedLevels(a, b);
	if (levels.includes('die')) return 'bender and die';
	if (levels.includes('bender')) return 'bender';
	if (levels.includes('tube')) return 'tube';
	return levels.includes('material') ? 'material' : 'nothing';
}

/** The unknowns of machine and material alone: what is the tube's, the seat's and the bend's integrated out. */
function machineOf({ mean, cov }: Gaussian): Gaussian {
	return { mean: MACHINE.map((i) => mean[i]!), cov: MACHINE.map((i) => MACHINE.map((j) => cov[i]![j]!)) };
}

/** `f` with these for machine and material, all else independent of them. */
function withMachine({ mean, cov }: Gaussian, machine: Gaussian): Gaussian {
	const place = mean.map((_, i) => MACHINE.indexOf(i));
	return {
		mean: mean.map((value, i) => machine.mean[place[i]!] ?? value),
		cov: cov.map((line, i) =>
			line.map((value, j) => {
				const [r, c] = [place[i]!, place[j]!];
				if (r >= 0 && c >= 0) return machine.cov[r]![c]!;
				return r < 0 && c < 0 ? value : 0;
			}),
		),
	};
}

function tallyOf({ surprises, readings }: Filter): Tally {
	return { sum: surprises, count: readings };
}

function between(start: Tally, end: Tally): Tally {
	return { sum: end.sum - start.sum, count: end.count - start.count };
}

/** The scatter of the whole shop: it lies in the people and their tools rather than in a die. */
function scatterOf(cold: Filter, families: readonly Family[]): { readings: number; surprises: number } {
	const sum = families.reduce((total, { scatter }) => total + scatter.sum, 0);
	const count = families.reduce((total, { scatter }) => total + scatter.count, 0);
	const weight = Math.min(1, MOST_READINGS / Math.max(1, count));
	return { readings: cold.readings + weight * count, surprises: cold.surprises + weight * sum };
}
