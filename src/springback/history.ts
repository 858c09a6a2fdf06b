/** The prior of a session from the lessons of those before it, of the same combination and of its kin. */

import { sumOf } from '../maths/list.ts';
import { type Filter, newTube } from './filter.ts';
import { type Likelihood, type Member, posterior } from './hierarchy.ts';
import { areSameKins, isSameKin, type Kin, nearness, sharedLevels } from './kin.ts';
import { kinsOf, type Lesson, together, withTallies } from './lesson.ts';
import { jointCovariance, machinesOf, priorOn, withMachines } from './several-dies.ts';

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

export interface Learned {
	prior: Filter;
	/** What it rests on, of the first combination asked for. */
	from: Provenance;
	/** The same of each of the others asked for, in their order; absent without any. */
	besides?: readonly Provenance[];
}

/**
 * Springback to expect of `kin` before the first pull, from `cold` (what is expected without any history) and all lessons:
 * those of the same combination as if one session had gone on, those of near kin as far as they share causes. `besides`: the other dies that
 * bend the same tube, each a combination of its own, as `cold` has them.
 */
export function learned(kin: Kin, cold: Filter, lessons: readonly Lesson[], besides: readonly Kin[] = []): Learned {
	const kins = [kin, ...besides];
	const near = nearestFamilies(kins, familiesOf(lessons));
	const from = provenance(kin, near);
	const on = besides.length === 0 ? {} : { besides: besides.map((one) => provenance(one, near)) };
	if (near.length === 0) return { prior: cold, from, ...on };
	const members = near.map((family): Member<readonly Kin[]> => {
		// A yield strength may have been corrected since.
		const who = family.kins.map((taught) => kins.find((one) => isSameKin(one, taught)) ?? taught);
		return { who, mean: coldMean(who), told: sumOfFamily(family) };
	});
	const machine = posterior({ who: kins, mean: machineMeans(cold, kins) }, members, jointCovariance);
	// The scatter is the whole shop's: it lies in the people and their tools rather than in a die.
	const scatter = together(near.flatMap(withWeights), MOST_READINGS);
	const told = {
		...cold,
		...withMachines(cold, machine),
		zero: zeroOn(kin.bender, lessons),
		right: newestOf(lessons)?.right ?? 0,
	};
	return { prior: newTube(withTallies(told, scatter)), from, ...on };
}

const machineMeans = (f: Filter, kins: readonly Kin[]) =>
	machinesOf(
		f,
		kins.map(({ die }) => die),
	).mean;

/** What is expected of these combinations, one after the other, without any history. The dial does not matter here. */
const coldMean = (kins: readonly Kin[]) => kins.flatMap((kin) => machineMeans(priorOn([kin], 1), [kin]));

/** Where a bender's dial stands with a straight tube, as the newest session that knew it has it. */
function zeroOn(bender: string, lessons: readonly Lesson[]): number | null {
	const known = lessons.filter(({ kin, zero }) => kin.bender === bender && zero !== undefined);
	return newestOf(known)?.zero ?? null;
}

function newestOf(lessons: readonly Lesson[]): Lesson | null {
	return lessons.reduce<Lesson | null>((a, b) => (a === null || newer(b, a) ? b : a), null);
}

/** All lessons of one combination, or of the same ones together, the newest first. */
interface Family {
	/** As the newest lesson has it: a yield strength may have been corrected under the same name. */
	kins: readonly Kin[];
	lessons: readonly Lesson[];
}

function familiesOf(lessons: readonly Lesson[]): Family[] {
	// By die first: that is quick to look up, and few combinations have one in common.
	const byDie = new Map<string, Lesson[][]>();
	for (const lesson of lessons) {
		const { kin } = lesson;
		const lists = byDie.get(kin.die) ?? [];
		if (lists.length === 0) byDie.set(kin.die, lists);
		const list = lists.find(([first]) => first && areSameKins(kinsOf(first), kinsOf(lesson)));
		if (list) list.push(lesson);
		else lists.push([lesson]);
	}
	return [...byDie.values()].flat().map(familyOf);
}

function familyOf(lessons: Lesson[]): Family {
	const sorted = lessons.sort((a, b) => (newer(a, b) ? -1 : 1));
	return { kins: kinsOf(sorted[0]!), lessons: sorted };
}

function newer(a: Lesson, b: Lesson): boolean {
	return a.at === b.at ? a.session > b.session : a.at > b.at;
}

/** The nearest first; among equals the one with the most sessions, and then by name, so that the order of lessons never matters. */
function nearestFamilies(kins: readonly Kin[], families: readonly Family[]): Family[] {
	const near = (family: Family) => Math.max(...kins.flatMap((a) => family.kins.map((b) => nearness(a, b))));
	return families
		.map((family) => ({ family, near: near(family), sessions: family.lessons.length }))
		.sort(
			(a, b) => b.near - a.near || b.sessions - a.sessions || (familyName(a.family) < familyName(b.family) ? -1 : 1),
		)
		.slice(0, MOST_KIN)
		.map(({ family }) => family);
}

function familyName({ kins }: Family): string {
	return JSON.stringify(
		kins.flatMap(({ bender, die, material, od, wall, clr }) => [bender, die, material, od, wall, clr]),
	);
}

/** The lessons of one combination that still count, by how much. */
function withWeights({ lessons }: Family): (Pick<Lesson, 'scatter' | 'information' | 'vector'> & { weight: number })[] {
	return lessons.slice(0, MOST_LESSONS).map(({ scatter, information, vector }, age) => {
		return { scatter, information, vector, weight: FADING.factor ** Math.max(0, age + 1 - FADING.full) };
	});
}

function sumOfFamily(family: Family): Likelihood {
	const vector = family.lessons[0]!.vector.map(() => 0);
	const information = vector.map(() => vector.map(() => 0));
	for (const lesson of withWeights(family)) {
		for (let i = 0; i < vector.length; i++) {
			vector[i]! += lesson.weight * lesson.vector[i]!;
			for (let j = 0; j < vector.length; j++) information[i]![j]! += lesson.weight * lesson.information[i]![j]!;
		}
	}
	return { information, vector };
}

function provenance(kin: Kin, families: readonly Family[]): Provenance {
	const told = families.map((family) => {
		// Of several dies that bent one tube, the one nearest to this combination counts.
		const at = nearestOf(kin, family.kins);
		const { lessons, kins } = family;
		return {
			kin: kins[at]!,
			sessions: lessons.length,
			pulls: sumOf(lessons.map((each) => pullsOn(each, at))),
		};
	});
	const exact = told.filter((each) => isSameKin(kin, each.kin));
	const others = told
		.filter((each) => !isSameKin(kin, each.kin))
		.map((each) => ({ ...each, shares: sharing(kin, each.kin) }));
	const near = SHARING.map((shares) => ({ shares, ...countOfTold(others.filter((each) => each.shares === shares)) }));
	return { exact: countOfTold(exact), near: near.filter(({ sessions }) => sessions > 0) };
}

function nearestOf(kin: Kin, kins: readonly Kin[]): number {
	const near = kins.map((each) => nearness(kin, each));
	return near.indexOf(Math.max(...near));
}

/** Pulls on the combination that stands at this place of a lesson. */
const pullsOn = ({ pulls, besides = [] }: Lesson, at: number): number => (at === 0 ? pulls : besides[at - 1]!.pulls);

const countOfTold = (told: readonly Count[]): Count => ({
	sessions: sumOf(told.map(({ sessions }) => sessions)),
	pulls: sumOf(told.map(({ pulls }) => pulls)),
});

function sharing(a: Kin, b: Kin): Sharing {
	const levels = sharedLevels(a, b);
	if (levels.includes('die')) return 'bender and die';
	if (levels.includes('bender')) return 'bender';
	if (levels.includes('tube')) return 'tube';
	return levels.includes('material') ? 'material' : 'nothing';
}
