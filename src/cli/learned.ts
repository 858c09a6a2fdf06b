import type { KeptRow } from '../journal/kept-row.ts';
import { lessonsThatWeigh } from '../journal/lessons.ts';
import type { Settings } from '../settings/settings.ts';
import { filterPrior } from '../springback/filter.ts';
import { type Kin, type Lesson, learned, type Provenance } from '../springback/history.ts';
import { isSameKin } from '../springback/kin.ts';
import { type SpringbackPoint, springbackAt } from '../springback/learned-curve.ts';
import { kinsOf, together } from '../springback/lesson.ts';
import {
	SCATTER_KINDS,
	type ScatterKind,
	type Scatter as Tallies,
	varianceOf,
	wrongPart,
} from '../springback/scatter.ts';
import type { Units } from '../tube/job.ts';
import { countsIn } from './lessons-for.ts';

/** Permanent angles that the page of a bender shows. */
const ANGLES = [15, 30, 45, 60, 90, 120];

/** What has been learned of one tube and material on one die. */
export interface LearnedHere {
	/** Lengths in mm. */
	kin: Kin;
	/** Of the newest session. */
	units: Units;
	/** All that taught of it; of many, the newest weigh most. */
	taught: { sessions: number; pulls: number };
	from: Provenance;
	springback: readonly SpringbackPoint[];
	/** Standard deviations in degrees by name, of those that were told by anything. */
	scatter: Readonly<Record<ScatterKind, ScatterTold>>;
	/** Part of readings that are wrong numbers, and of how many readings that was told. */
	wrong: { part: number; count: number };
}

export interface ScatterTold {
	sd: number;
	/** How many readings told it. */
	count: number;
}

/** What the kept sessions have taught, by bender, die and tube in the order of their names; and which of them do not count. */
export function learnedFrom(
	rows: readonly KeptRow[],
	settings: Settings,
): { learned: LearnedHere[]; leftOut: KeptRow[] } {
	const taught = rows.filter(({ kin }) => kin !== null);
	const counts = countsIn(settings);
	const lessons = lessonsThatWeigh(taught, counts);
	return {
		learned: combinations(taught.filter(counts))
			.map((alike) => learnedOf(alike, lessons))
			.sort(byName),
		leftOut: taught.filter((row) => !counts(row)),
	};
}

/** What one session taught of one combination; of a tube that several dies bent, one for each. */
interface TaughtOfKin {
	row: KeptRow;
	kin: Kin;
	pulls: number;
}

/** What the rows taught of the same combination together, each list newest first. */
function combinations(rows: readonly KeptRow[]): TaughtOfKin[][] {
	const byKin = new Map<Kin, TaughtOfKin[]>();
	const lists: TaughtOfKin[][] = [];
	for (const taught of rows.flatMap(taughtOfKins)) {
		const { kin } = taught;
		// Most rows share the very object.
		let list = byKin.get(kin) ?? lists.find(([first]) => first && isSameKin(first.kin, kin));
		if (!list) {
			list = [];
			lists.push(list);
		}
		byKin.set(kin, list);
		list.push(taught);
	}
	return lists;
}

function taughtOfKins(row: KeptRow): TaughtOfKin[] {
	const { kin, pulls, besides } = row;
	return kin === null ? [] : [{ kin, pulls }, ...besides].map((each) => ({ row, ...each }));
}

function byName(a: LearnedHere, b: LearnedHere): number {
	const name = ({ kin: { bender, die, material, od, wall } }: LearnedHere) =>
		[bender, die, material, od, wall].join('\n');
	return name(a) < name(b) ? -1 : 1;
}

function learnedOf(told: readonly TaughtOfKin[], lessons: readonly Lesson[]): LearnedHere {
	const [newest] = told;
	if (!newest) throw new RangeError('A combination that nothing taught of has not been learned.');
	const { kin } = newest;
	const { job } = newest.row;
	const { prior, from } = learned(kin, filterPrior(kin.k), lessons);
	const tallies = talliesOf(lessons.filter((lesson) => kinsOf(lesson).some((each) => isSameKin(each, kin))));
	const pulls = told.reduce((sum, each) => sum + each.pulls, 0);
	const taught = { sessions: told.length, pulls };
	return {
		kin,
		units: job?.units ?? 'mm',
		taught,
		from,
		springback: springbackAt(prior, ANGLES),
		scatter: scatterOf(tallies),
		wrong: { part: wrongPart(tallies), count: Math.round(tallies.wrong.count) },
	};
}

/** Of all these lessons. */
function talliesOf(lessons: readonly Lesson[]): Tallies {
	const lists = lessons.map(({ scatter }) => ({ scatter, weight: 1 }));
	return together(lists, Number.POSITIVE_INFINITY);
}

/** What tallies say of each scatter, on top of what is common; `count`: deviations that tell of it. */
function scatterOf(tallies: Tallies): Record<ScatterKind, ScatterTold> {
	const told = (kind: ScatterKind): ScatterTold => {
		return { sd: Math.sqrt(varianceOf(kind, tallies)), count: Math.round(tallies[kind].count) };
	};
	return Object.fromEntries(SCATTER_KINDS.map((kind) => [kind, told(kind)])) as Record<ScatterKind, ScatterTold>;
}
