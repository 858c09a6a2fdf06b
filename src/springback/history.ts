/** The prior of a session from the lessons of those before it, of the same combination and of its kin. */

import type { Gaussian } from '../maths/gaussian.ts';
import { type Filter, filterPrior, newTube } from './filter.ts';
import { type Member, posterior, type Told } from './hierarchy.ts';
import { covarianceOf, isSame, type Kin, MACHINE, nearness, sharedLevels } from './kin.ts';
import { type Lesson, machineOf, together, withTallies } from './lesson.ts';

export type { Kin, Lesson };

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

/**
 * Beyond these more combinations hardly add anything (of 60 on three benders, all would narrow no prediction by more than 2 %), and
 * the time grows with their cube.
 */
const MOST_KIN = 12;
/** A shop's scatter counts as at most this many readings, so that another operator is soon known too. */
const MOST_READINGS = 100;
/**
 * A machine wears and is adjusted: the newest lessons of a combination count in full, each older one this much less than the one
 * after it. On a simulated machine that drifts by .1 degree and 1 % a tube, the 31st tube's bends pass the tolerance in 5
 * instead of 16 % and take 1.95 instead of 2.57 pulls; on one that stays as it is they take 1.69 instead of 1.65.
 */
const FADING = { full: 8, factor: 0.75 };
/** What weighs less than this is left out. */
const FADED = 1e-3;
/** How many lessons of a combination, the newest, weigh anything. */
export const MOST_LESSONS = FADING.full + Math.floor(Math.log(FADED) / Math.log(FADING.factor));

/**
 * Springback to expect of `kin` before the first pull, from `cold` (what is expected without any history) and all lessons:
 * those of the same combination as if one session had gone on, those of near kin as far as they share causes.
 */
export function learned(kin: Kin, cold: Filter, lessons: readonly Lesson[]): { prior: Filter; from: Provenance } {
	const near = nearest(kin, familiesOf(lessons));
	const from = provenance(kin, near);
	if (near.length === 0) return { prior: cold, from };
	const members = near.map((family): Member<Kin> => {
		const who = isSame(kin, family.kin) ? kin : family.kin;
		return { who, mean: machineOf(filterPrior(who.k)).mean, told: sumOf(family) };
	});
	const machine = posterior({ who: kin, mean: machineOf(cold).mean }, members, covarianceOf);
	// The scatter is the whole shop's: it lies in the people and their tools rather than in a die.
	const scatter = together(near.flatMap(weighed), MOST_READINGS);
	const told = {
		...cold,
		...withMachine(cold, machine),
		zero: zeroOn(kin.bender, lessons),
		right: newestOf(lessons)?.right ?? 0,
	};
	return { prior: newTube(withTallies(told, scatter)), from };
}

/** Where a bender's dial stands with a straight tube, as the newest session that knew it has it. */
function zeroOn(bender: string, lessons: readonly Lesson[]): number | null {
	const known = lessons.filter(({ kin, zero }) => kin.bender === bender && zero !== undefined);
	return newestOf(known)?.zero ?? null;
}

function newestOf(lessons: readonly Lesson[]): Lesson | null {
	return lessons.reduce<Lesson | null>((a, b) => (a === null || newer(b, a) ? b : a), null);
}

/** All lessons of one combination, the newest first. */
interface Family {
	/** As the newest lesson has it: a yield strength may have been corrected under the same name. */
	kin: Kin;
	lessons: readonly Lesson[];
}

function familiesOf(lessons: readonly Lesson[]): Family[] {
	// By die first: that is quick to look up, and few combinations have one in common.
	const byDie = new Map<string, Lesson[][]>();
	for (const lesson of lessons) {
		const { kin } = lesson;
		const lists = byDie.get(kin.die) ?? [];
		if (lists.length === 0) byDie.set(kin.die, lists);
		const list = lists.find(([first]) => first && isSame(first.kin, kin));
		if (list) list.push(lesson);
		else lists.push([lesson]);
	}
	return [...byDie.values()].flat().map(familyOf);
}

function familyOf(lessons: Lesson[]): Family {
	const sorted = lessons.sort((a, b) => (newer(a, b) ? -1 : 1));
	return { kin: sorted[0]!.kin, lessons: sorted };
}

function newer(a: Lesson, b: Lesson): boolean {
	return a.at === b.at ? a.session > b.session : a.at > b.at;
}

/** The nearest first; among equals the one with the most sessions, and then by name, so that the order of lessons never matters. */
function nearest(kin: Kin, families: readonly Family[]): Family[] {
	return families
		.map((family) => ({ family, near: nearness(kin, family.kin), sessions: family.lessons.length }))
		.sort((a, b) => b.near - a.near || b.sessions - a.sessions || (nameOf(a.family) < nameOf(b.family) ? -1 : 1))
		.slice(0, MOST_KIN)
		.map(({ family }) => family);
}

function nameOf({ kin: { bender, die, material, od, wall, clr } }: Family): string {
	return JSON.stringify([bender, die, material, od, wall, clr]);
}

/** The lessons of one combination that still count, by how much. */
function weighed({ lessons }: Family): (Lesson & { weight: number })[] {
	return lessons
		.slice(0, MOST_LESSONS)
		.map((lesson, age) => ({ ...lesson, weight: FADING.factor ** Math.max(0, age + 1 - FADING.full) }));
}

function sumOf(family: Family): Told {
	const information = MACHINE.map(() => MACHINE.map(() => 0));
	const vector = MACHINE.map(() => 0);
	for (const lesson of weighed(family)) {
		for (let i = 0; i < MACHINE.length; i++) {
			vector[i]! += lesson.weight * lesson.vector[i]!;
			for (let j = 0; j < MACHINE.length; j++) information[i]![j]! += lesson.weight * lesson.information[i]![j]!;
		}
	}
	return { information, vector };
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
	const lessons = families.flatMap((family) => family.lessons);
	return { sessions: lessons.length, pulls: lessons.reduce((sum, { pulls }) => sum + pulls, 0) };
}

function sharing(a: Kin, b: Kin): Sharing {
	const levels = sharedLevels(a, b);
	if (levels.includes('die')) return 'bender and die';
	if (levels.includes('bender')) return 'bender';
	if (levels.includes('tube')) return 'tube';
	return levels.includes('material') ? 'material' : 'nothing';
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
