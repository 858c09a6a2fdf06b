/** One machine's tubes bent by whole sessions, each taught by those before it, and what the program said held against what was. */
import { type Draw, draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { trueShape } from '../../src/practice/true-tube.ts';
import type { World } from '../../src/practice/world.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { learnedPrior, type Start } from '../../src/session/log/start.ts';
import type { State } from '../../src/session/log/state.ts';
import { standing } from '../../src/session/outputs.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { DoneNote } from '../../src/session/protocol/notes.ts';
import type { Lesson } from '../../src/springback/history.ts';
import { corners } from '../../src/tube/frames.ts';
import type { Job } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { distance } from '../../src/tube/vector.ts';
import type { Tally } from './calibration-tally.ts';
import { driven } from './driven.ts';
import { checkMisses, directionMiss, endAxes, endMiss } from './fit-figures.ts';
import { startOf, trimmed } from './fit-made.ts';

/** Greatest stretch of an arc, drawn evenly from 0: nobody has measured it. */
const STRETCH = 0.008;
const MOST_PULLS = 60;

/** Bends as many tubes on one machine as there are tallies, and more where some are null: those only teach. */
export function bendTubes(job: Job, world: World, seed: number, tallies: readonly (Tally | null)[]): void {
	const draw = draws(seed);
	const trueJob = { ...job, tooling: { ...job.tooling, stretch: draw.uniform(0, STRETCH) } };
	const station = new Station(trueJob, world, draw);
	const lessons: Lesson[] = [];
	for (const [tube, tally] of tallies.entries()) {
		if (tube > 0) station.freshTube();
		const start = startAfter(job, lessons, tube);
		try {
			const state = bendOne(start, { station, world, draw }, tally);
			const lesson = lessonOf(state);
			if (lesson) lessons.push(lesson);
			if (tally) told(state, station, trueJob, tally);
		} catch (error) {
			tally?.broke(error instanceof Error ? error.message : String(error));
		}
	}
}

function startAfter(job: Job, lessons: readonly Lesson[], tube: number): Start {
	const at = new Date(Date.UTC(2026, 0, 1, tube)).toISOString();
	return { ...startOf(job), ...learnedPrior(job, lessons), learn: true, id: `tube ${tube}`, at };
}

function bendOne(start: Start, hands: { station: Station; world: World; draw: Draw }, tally: Tally | null): State {
	return driven(start, hands, (open, before, action) => {
		if (open.ask === 'pull' && open.pull > MOST_PULLS) throw new Error(`over ${MOST_PULLS} pulls on one bend`);
		if (tally) saidOf(open, before, action, hands.station, tally);
	});
}

/** What is said at an ask of what is there, or was just made. */
function saidOf(open: Ask, { start }: State, action: Action, station: Station, tally: Tally): void {
	const angle = 'bend' in open ? station.trueAngles[(open.bend ?? 1) - 1]! : 0;
	if (open.ask === 'pull') {
		tally.add('pull', open.expect.angle, open.expect.sd, angle);
		tally.bin('risk', open.risk, angle > open.target + start.job.tolerance.over);
	}
	if (open.ask === 'measure') tally.add('measured', open.expect.angle, open.expect.sd, angle);
	if (open.ask === 'check') tally.add('checks', open.expect.value, open.expect.sd, station.trueCheck(open.name));
	if (open.ask === 'decide' && action.do === 'accept') {
		tally.add('made', open.made.angle, open.made.sd, angle);
		tally.count('over', angle > open.target + start.job.tolerance.over);
	}
}

/** What is said at the end of the tube as it then is, its ends cut as the program says. */
function told(state: State, station: Station, job: Job, tally: Tally): void {
	const end = standing(state, '');
	if (!('note' in end) || end.note !== 'done') throw new Error('the session ended without an end');
	tally.bent(end.bends.map(({ pulls }) => pulls));
	if (end.scrapped || end.trim === null) {
		tally.scrap(isGood(state, station));
		return;
	}
	for (const [i, { made, sd }] of end.bends.entries())
		tally.add('made, at the end', made!, sd!, station.trueAngles[i]!);
	const trim = { start: end.trim.start, end: Math.max(0, end.trim.end) };
	const truth = trimmed(trueShape(station.trueBends, station.piece, job), trim, state);
	for (const { value, sd, truly } of endAxes(state, truth)) tally.add('far end, by axes', value, sd, truly);
	farEnd(end, endMiss(truth, state), directionMiss(truth, state), tally);
	const fits = trulyFits(truth, state);
	tally.count(end.fits ? 'fits, of those said to' : 'fits, of those said not to', fits);
	if (fits) tally.count('said to fit, of those that do', end.fits);
	const { chance } = end as Partial<{ chance: number | null }>;
	if (typeof chance === 'number') tally.bin('chance', chance, fits);
}

function farEnd(end: DoneNote, place: number, direction: number, tally: Tally): void {
	tally.pair('place', end.endOffset!, place);
	tally.pair('direction', end.endAngle!, direction);
	const { sd } = end as Partial<{ sd: { endOffset: number; endAngle: number } | null }>;
	if (!sd) return;
	tally.add('far end, place', end.endOffset!, sd.endOffset, place);
	tally.add('far end, direction', end.endAngle!, sd.endAngle, direction);
}

/** Whether every bend made so far lies truly within its tolerance. */
function isGood({ start, bends }: State, { trueAngles }: Station): boolean {
	const { under, over } = start.job.tolerance;
	return trueAngles.every((angle, i) => angle >= bends[i]!.target - under && angle <= bends[i]!.target + over);
}

/** As the line mode's page has it: checks within their tolerances, corners and far end within .shape, the last straight within .direction. */
function trulyFits(truth: Shape, state: State): boolean {
	const { tolerance } = state.start.job;
	const { shape = 4 * tolerance.length, direction = 1 } = tolerance as { shape?: number; direction?: number };
	// The last of them is the far end.
	const drawn = corners(state.design.shape);
	return (
		corners(truth).every((corner, i) => i === 0 || distance(corner, drawn[i]!) <= shape) &&
		directionMiss(truth, state) <= direction &&
		checkMisses(truth, state).every(({ miss, tolerance: allowed }) => miss <= allowed)
	);
}
