import type { KeptRow } from '../journal/kept-row.ts';
import type { Settings } from '../settings/settings.ts';
import { filterPrior } from '../springback/filter.ts';
import { type Kin, type Lesson, learned, type Provenance } from '../springback/history.ts';
import { isSame } from '../springback/kin.ts';
import { type SpringbackPoint, springbackAt } from '../springback/learned-curve.ts';
import type { Units } from '../tube/job.ts';

/** Permanent angles that the page of a bender shows. */
const ANGLES = [15, 30, 45, 60, 90, 120];

/** What has been learned of one tube and material on one die. */
export interface Learned {
	/** Lengths in mm. */
	kin: Kin;
	/** Of the newest session. */
	units: Units;
	from: Provenance;
	springback: readonly SpringbackPoint[];
	/** Standard deviations in degrees by name, of those that were told by anything. */
	scatter: Readonly<Record<string, Scatter>>;
}

export interface Scatter {
	sd: number;
	/** How many readings told it. */
	count: number;
}

/** A lesson and the unit of its job. */
interface Taught {
	lesson: Lesson;
	units: Units;
}

/** What the kept sessions have taught, by bender, die and tube in the order of their names; and which lessons do not count. */
export function learnedFrom(rows: readonly KeptRow[], settings: Settings): { learned: Learned[]; forgotten: Lesson[] } {
	const taught = rows.flatMap(({ begun, lesson }) => (begun && lesson ? [{ lesson, units: begun.units }] : []));
	const counts = ({ lesson: { kin, at } }: Taught) => settings.counts(kin.bender, kin.die, at);
	const counting = taught.filter(counts);
	const lessons = counting.map(({ lesson }) => lesson);
	// The newest of each combination, since rows come newest first.
	const newest: Taught[] = [];
	for (const each of counting) if (!newest.some(({ lesson }) => isSame(lesson.kin, each.lesson.kin))) newest.push(each);
	return {
		learned: newest.map(({ lesson, units }) => learnedOf(lesson.kin, units, lessons)).sort(byName),
		forgotten: taught.filter((each) => !counts(each)).map(({ lesson }) => lesson),
	};
}

function byName(a: Learned, b: Learned): number {
	const name = ({ kin: { bender, die, material, od, wall } }: Learned) => [bender, die, material, od, wall].join('\n');
	return name(a) < name(b) ? -1 : 1;
}

function learnedOf(kin: Kin, units: Units, lessons: readonly Lesson[]): Learned {
	const { prior, from } = learned(kin, filterPrior(kin.k), lessons);
	const scatter = scatterOf(lessons.filter((lesson) => isSame(lesson.kin, kin)));
	return { kin, units, from, springback: springbackAt(prior, ANGLES), scatter };
}

function scatterOf(lessons: readonly Lesson[]): Record<string, Scatter> {
	const tallies = new Map<string, { sum: number; count: number }>();
	for (const { scatter } of lessons) {
		for (const [name, { sum, count }] of Object.entries(scatter)) {
			const before = tallies.get(name) ?? { sum: 0, count: 0 };
			tallies.set(name, { sum: before.sum + sum, count: before.count + count });
		}
	}
	const told = [...tallies].filter(([name, { count }]) => name !== 'readings' && count > 0);
	return Object.fromEntries(told.map(([name, { sum, count }]) => [name, { sd: Math.sqrt(sum / count), count }]));
}
