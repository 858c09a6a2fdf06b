/** One shop's sessions in a row, as the rows that are kept of them; from a stated tube on its springback is another. */

import type { KeptRow } from '../../src/journal/kept-row.ts';
import { draws } from '../../src/practice/random.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { filterPrior, made, newTube } from '../../src/springback/filter.ts';
import { type Kin, type Lesson, learned, MOST_LESSONS } from '../../src/springback/history.ts';
import { springbackAt } from '../../src/springback/learned-curve.ts';
import { lessonFrom } from '../../src/springback/lesson.ts';
import { row } from '../helpers/session/shifted-rows.ts';
import { session } from './stops-session.ts';
import { openStation } from './stops-station.ts';

/** After so many tubes the springback of every bend is larger by `takeUp` degrees, and by this part of the angle. */
export interface Change {
	after: number;
	takeUp: number;
	part: number;
}

const DIAL_STEP = 0.5;
/** A common chassis tube: 1.5 by .095 in, 60 ksi, on a 6 in die; the part by mechanics in `k`. */
const KIN: Kin = { bender: 'shop', die: '6 in', od: 38.1, wall: 2.413, clr: 152.4, material: '1020-dom', k: 0.021 };
const BAND = { under: 0.5, over: 0.5, risk: 0.02 };
const JOBS = 3;

/** So many sessions of the shop of this seed, each begun with what those before it taught; the oldest first. Seeds ten apart are other shops. */
export function sessionsOf(seed: number, count: number, change?: Change): KeptRow[] {
	const station = openStation(USUAL_SHOP, seed);
	const draw = draws(seed + 1);
	const jobs = Array.from({ length: JOBS }, () =>
		Array.from({ length: 2 + Math.floor(draw.uniform(0, 3)) }, () => draw.uniform(20, 100)),
	);
	const rule = session(station);
	const cold = filterPrior(KIN.k, DIAL_STEP);
	const lessons: Lesson[] = [];
	return Array.from({ length: count }, (_, n) => {
		if (change && n === change.after) station.shop.wear(change.takeUp, change.part);
		station.shop.newTube();
		const { prior } = learned(KIN, cold, lessons.slice(-MOST_LESSONS));
		const begun = newTube(prior);
		rule.begin(begun);
		const job = Math.floor(draw.uniform(0, jobs.length));
		let [pulls, error] = [0, 0];
		for (const target of jobs[job]!) {
			pulls += rule.bend({ target, ...BAND }).pulls;
			error += (made(rule.filter).angle - target) / jobs[job]!.length;
		}
		const at = new Date(Date.UTC(2026, 0, 1, n)).toISOString();
		const about = { at, session: at, pulls, readings: pulls };
		const lesson = lessonFrom(KIN, begun, rule.filter, about);
		lessons.push(lesson);
		return rowOf(lesson, `Job ${job}`, error);
	});
}

function rowOf(lesson: Lesson, name: string, error: number): KeptRow {
	const { at, session: id, pulls, kin } = lesson;
	const [own] = springbackAt(learned(KIN, filterPrior(KIN.k, DIAL_STEP), [lesson]).prior, [45]);
	return row(0, 0, {
		...{ id, at, kin, pulls, lesson, startId: id, touched: at, path: '' },
		job: { name, file: '', units: 'in', bender: kin.bender, die: kin.die },
		figures: { springback: own!.back, error, miss: null, taken: 1, pulls },
	});
}
