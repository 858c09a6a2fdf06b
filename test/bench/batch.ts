/**
 * Ten of the same in a row: how many of the second to tenth tube truly fit and what pulls they take, where piece 1's cut and marks are held, and
 * where they follow what the pieces before have shown as soon as that moves one by more than the tape shows. The same shops both ways. They share
 * nothing with the springback room's model; their bends have the radius of mechanics, or (`wraps`) as much more as the springback grows with the
 * angle. A number is the first seed, a word the jobs with it in their name; `batches=n` bends so many of each.
 */

import { operatorAnswer } from '../../src/practice/operator.ts';
import { ELSEWHERE, FOREIGN } from '../../src/practice/other-shops.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { openShop } from '../../src/practice/shop.ts';
import { Station } from '../../src/practice/station.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { beginning, growthOf } from '../../src/session/log/start.ts';
import { nextEntry, type State } from '../../src/session/log/state.ts';
import type { Lesson } from '../../src/springback/history.ts';
import type { PlannedGrowth } from '../../src/tube/growth.ts';
import type { Job } from '../../src/tube/job.ts';
import { marksApart } from '../../src/tube/marks-apart.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { JOBS } from './advice-jobs.ts';
import { trulyFits } from './advice-truth.ts';
import { startOf } from './fit-made.ts';

const WORLDS: readonly World[] = [
	USUAL_SHOP,
	...Object.values(ELSEWHERE),
	FOREIGN['heavy tails']!,
	FOREIGN['finder bias']!,
];
const words = process.argv.slice(2);
const SEED = Number(words.find((word) => /^\d+$/.test(word)) ?? 34_100_000);
const BATCHES = Number(words.find((word) => word.startsWith('batches='))?.slice(8) ?? 35);
const named = words.filter((word) => /^[a-z]+$/i.test(word));
const PIECES = 10;
const STRETCH = 0.008;
const MOST_ANSWERS = 600;
const MOST_REFUSALS = 2;

const WAYS = ['held', 'follow'] as const;
const RADII = ['of mechanics', 'wraps'] as const;

interface Bent {
	fits: boolean;
	pulls: number;
	scrapped: boolean;
	/** The growth that it was marked for. */
	growth: number;
}

/** The ten tubes of one shop; null for one that did not end. */
function batch(job: Job, world: World, seed: number, way: (typeof WAYS)[number], radii: (typeof RADII)[number]) {
	const drawn = draws(seed);
	const growth = radii === 'wraps' ? wrapped(job, world, draws(seed)) : null;
	const stretch = draws(seed + 5_000_000).uniform(0, STRETCH);
	const trueJob = { ...job, tooling: { ...job.tooling, growth, stretch } };
	const station = new Station(trueJob, world, drawn);
	const lessons: Lesson[] = [];
	let before: PlannedGrowth | undefined;
	return Array.from({ length: PIECES }, (_, n): Bent | null => {
		if (n > 0) station.freshTube();
		const [as, now] = [beginning({ job }, lessons, before), beginning({ job }, lessons)];
		const isHeld = way === 'held' || marksApart(job, growthOf(as), growthOf(now)) <= job.tooling.tape;
		const at = new Date(Date.UTC(2026, 0, 1, n)).toISOString();
		const start = { ...startOf(job), ...(isHeld ? as : now), id: `${n}`, at, learn: true };
		before = growthOf(start);
		const bent = bend(initial(start), station, trueJob, world, draws(seed + 100 * (n + 1) + 10_000_000));
		const lesson = bent === null ? null : lessonOf(bent.state);
		if (lesson !== null) lessons.push(lesson);
		return bent && { ...bent, growth: start.growth };
	});
}

/** The radius over the die's where all springback that grows with the angle is the arc's, as unloading of it has it. */
function wrapped(job: Job, world: World, draw: Draw): number {
	const { reach } = openShop(world, draw, job.tooling.maxAngle);
	const [low, high] = [40, 100];
	return 1 / (1 - (high - reach(high) - (low - reach(low))) / (high - low));
}

function bend(begun: State, station: Station, trueJob: Job, world: World, draw: Draw) {
	let state = begun;
	let [refusals, pulls] = [0, 0];
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) {
			const scrapped = state.phase.at === 'done' && state.phase.scrapped !== null;
			return { state, pulls, scrapped, fits: trulyFits(state, station, trueJob) };
		}
		const usual = operatorAnswer(open, station.see(open), world, draw, gaveUpWords);
		const action = refusals > MOST_REFUSALS ? ({ do: 'undo' } as const) : usual;
		const decision = answerEvents({ action }, state);
		if ('refused' in decision) {
			refusals += 1;
			continue;
		}
		refusals = 0;
		if (open.ask === 'pull') pulls += 1;
		station.did(open, action);
		state = evolve(state, { entry: nextEntry(state), at: state.start.at, events: decision.events });
	}
	return null;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

for (const job of JOBS.filter(({ name }) => named.length === 0 || named.some((word) => name.includes(word))).slice(
	0,
	3,
)) {
	for (const radii of RADII) {
		const each = Array.from({ length: BATCHES }, (_, i) =>
			WAYS.map((way) => batch(job, WORLDS[i % WORLDS.length]!, SEED + i, way, radii)),
		);
		console.log(`${job.name}, radius ${radii}: ${BATCHES} batches, seeds ${SEED} to ${SEED + BATCHES - 1}`);
		const later = each.map((ways) => ways.map((tubes) => tubes.slice(1)));
		const whole = later.flatMap(([held, follow]) =>
			held!.flatMap((one, n): [Bent, Bent][] => (one && follow![n] ? [[one, follow![n]!]] : [])),
		);
		for (const [w, way] of WAYS.entries()) {
			const of = whole.map((pair) => pair[w]!);
			const moved = later.filter((ways, i) => ways[w]!.some((bent) => bent?.growth !== each[i]![w]![0]?.growth)).length;
			console.log(
				[
					`  ${way}`.padEnd(10),
					`${of.length} tubes`,
					`fit ${(100 * mean(of.map(({ fits }) => Number(fits)))).toFixed(1)} %`,
					`pulls ${mean(of.map(({ pulls }) => pulls)).toFixed(2)}`,
					`scrapped ${of.filter(({ scrapped }) => scrapped).length}`,
					`batches whose marks moved ${moved}`,
				].join('  '),
			);
		}
		const only = (w: number) => whole.filter((pair) => pair[w]!.fits && !pair[1 - w]!.fits).length;
		console.log(`  fits one way alone: held ${only(0)}, follow ${only(1)}`);
	}
}
