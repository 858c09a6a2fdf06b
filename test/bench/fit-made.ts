/**
 * Tubes bent by the session core with errors of a stated size: the core plans, estimates and corrects, the bends land where the
 * draw says. The same draw can be bent again by another rule, so that rules are compared on the very same errors.
 */
import { spreadOf } from '../../src/fit/as-built.ts';
import { nearestTo } from '../../src/maths/scalar.ts';
import type { Draw } from '../../src/practice/random.ts';
import { type TrueBend, trueShape } from '../../src/practice/true-tube.ts';
import { cutToFit, rawTube, tubeAtWork } from '../../src/session/estimate/tube-at-work.ts';
import { acceptBend } from '../../src/session/log/apply-bend.ts';
import { COUNTED_AS_ONE, takeReading } from '../../src/session/log/apply-reading.ts';
import { initial } from '../../src/session/log/fold.ts';
import type { Start } from '../../src/session/log/start.ts';
import { coldPrior } from '../../src/session/log/start.ts';
import { type State, withBend } from '../../src/session/log/state.ts';
import { drawingNumbers } from '../../src/session/plan/correction.ts';
import type { Numbers } from '../../src/session/protocol/asks.ts';
import { checksDue } from '../../src/session/reading/check-reading.ts';
import { reopened } from '../../src/springback/filter.ts';
import { modelName } from '../../src/springback/model-name.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import type { Job } from '../../src/tube/job.ts';
import type { Shape } from '../../src/tube/shape.ts';
import { distance } from '../../src/tube/vector.ts';

/** Standard deviations; degrees and the job's unit. */
export interface Noise {
	/** Where bends land against their target. */
	angle: number;
	/** Rotations and marks as hands set them. */
	rotation: number;
	mark: number;
	/** The angle finder; 0: the angle is known. */
	finder: number;
	/** Rotations as read back; 0: known, null: not read. */
	readBack: number | null;
	/** Log-normal radius spread of the die and of one bend, and the greatest stretch, drawn evenly from 0. */
	die: number;
	bendRadius: number;
	stretch: number;
	/** A drop or a span by tape. */
	check: number;
}

/** All errors of one tube, drawn once. */
export interface Errors {
	angles: number[];
	rotations: number[];
	marks: number[];
	finder: number[];
	readBack: number[];
	radii: number[];
	stretch: number;
	checks: number[];
}

export function drawErrors(job: Job, bends: number, noise: Noise, draw: Draw): Errors {
	const each = (sd: number) => Array.from({ length: bends }, () => draw.normal(0, sd));
	const die = draw.normal(0, noise.die);
	return {
		angles: each(noise.angle),
		rotations: each(noise.rotation).map((error, i) => (i === 0 ? 0 : error)),
		marks: each(noise.mark),
		finder: each(noise.finder),
		readBack: each(noise.readBack ?? 0),
		radii: each(noise.bendRadius).map((error) => Math.exp(die + error)),
		stretch: draw.uniform(0, noise.stretch),
		checks: job.checks.map(() => draw.normal(0, noise.check)),
	};
}

export function startOf(job: Job): Start {
	return {
		id: 'bench',
		program: 'bench',
		at: '2026-01-01T00:00:00.000Z',
		job,
		jobFile: '/none',
		jobSource: {},
		learn: false,
		model: modelName(),
		...coldPrior(job),
	};
}

/** `kept`: the design's numbers; `corrected`: as the session core does it; `oracle`: the core told what is true. */
export type Rule = 'kept' | 'corrected' | 'oracle';

export interface MadeTube {
	state: State;
	/** As it lies with its ends cut by what is believed. */
	truth: Shape;
	bends: TrueBend[];
	/** Of every correction: by how much it is worse than the drawing's numbers, if no bend after it errs, over what is not known of the end. */
	worse: number[];
}

export function makeTube(job: Job, noise: Noise, errors: Errors, rule: Rule): MadeTube {
	let state = initial(startOf(job));
	const bends: TrueBend[] = [];
	const worse: number[] = [];
	const trueJob = { ...job, tooling: { ...job.tooling, stretch: errors.stretch } };
	for (const i of state.bends.keys()) {
		const numbers = state.plan.current[i]!;
		const bend: TrueBend = {
			mark: numbers.fromStart + errors.marks[i]!,
			rotation: numbers.rotation + errors.rotations[i]!,
			angle: numbers.angle + errors.angles[i]!,
			wrapped: numbers.angle + errors.angles[i]!,
			radius: job.tooling.clr * state.start.growth * errors.radii[i]!,
		};
		bends.push(bend);
		if (rule === 'kept') continue;
		state = worked(state, i, noise, errors, bend, rule);
		for (const name of rule === 'corrected' ? checksDue(state, i + 1) : []) {
			const index = job.checks.findIndex((check) => check.name === name);
			const shape = trueShape(bends, state.piece, trueJob);
			const value = nearestTo(
				checkValue(job.checks[index]!, shape, job.tube) + errors.checks[index]!,
				job.tooling.tape / 2,
			);
			state = takeReading(
				{ ...state, phase: { at: 'check', queue: [name] } },
				{ of: 'check', name, value },
				COUNTED_AS_ONE,
			);
		}
		state = acceptBend(state);
		if (rule === 'corrected') worse.push(...worseBy(state, bends, trueJob));
	}
	return { state, bends, worse, truth: cut(state, bends, trueJob, rule) };
}

/** The bend with index `i` pulled, with what the instruments say of it. */
function worked(state: State, i: number, noise: Noise, errors: Errors, bend: TrueBend, rule: Rule): State {
	const numbers = state.plan.current[i]!;
	const exact = rule === 'oracle';
	const known = exact || noise.finder === 0;
	// As the filter weighs the finder against where the stop rule lets the bend land.
	const part = known ? 1 : noise.angle ** 2 / (noise.angle ** 2 + noise.finder ** 2);
	const angle = numbers.angle + part * (errors.angles[i]! + (known ? 0 : errors.finder[i]!));
	const sd = known ? 1e-6 : Math.sqrt(part) * noise.finder;
	const read = exact || noise.readBack !== null;
	const rotation = !read
		? numbers.rotation
		: exact || noise.readBack === 0
			? bend.rotation
			: nearestTo(bend.rotation + errors.readBack[i]!, 0.1);
	const row = { entry: 0, seat: 1, pointer: null, stop: angle, loaded: angle, released: null, measured: [] };
	return withBend({ ...state, filter: reopened(state.filter, { angle, sd }, angle) }, i + 1, {
		mark: exact ? bend.mark : numbers.fromStart,
		rotation,
		readBack: read,
		seats: 1,
		pulls: [row],
		told: { angle, sd },
		target: numbers.angle,
	});
}

function cut(state: State, bends: TrueBend[], job: Job, rule: Rule): Shape {
	const believed = tubeAtWork(state, state.plan.current);
	const trim = rule === 'kept' ? job.trim : { start: believed.trimStart, end: Math.max(0, believed.trimEnd) };
	return trimmed(trueShape(bends, state.piece, job), trim, state);
}

/** Both ends cut, and laid with bend 1's plane as the drawing has it. */
export function trimmed({ straights, bends }: Shape, trim: { start: number; end: number }, state: State): Shape {
	const last = straights.length - 1;
	return {
		straights: straights.map((s, k) => (k === 0 ? s - trim.start : k === last ? s - trim.end : s)),
		bends: bends.map((arc, i) => (i === 0 ? { ...arc, rotation: state.design.shape.bends[0]!.rotation } : arc)),
	};
}

/** None after the last bend, since nothing is left to correct. */
function worseBy(state: State, made: readonly TrueBend[], job: Job): number[] {
	if (made.length === state.bends.length) return [];
	const radius = job.tooling.clr * state.start.growth;
	const offWith = (numbers: readonly Numbers[]) => {
		const rest = numbers
			.slice(made.length)
			.map(
				({ fromStart, angle, rotation }): TrueBend => ({ mark: fromStart, rotation, angle, wrapped: angle, radius }),
			);
		const { trimStart, trimEnd } = tubeAtWork(state, numbers);
		const shape = trueShape([...made, ...rest], state.piece, job);
		const truth = trimmed(shape, { start: trimStart, end: Math.max(0, trimEnd) }, state);
		return distance(shapeEnd(truth).end, state.design.goal.end);
	};
	const { covariance } = spreadOf(state.built!, ({ bends, ...tooling }) => {
		const planned = rawTube(state, state.plan.current);
		const whole = { ...tooling, bends: [...bends, ...planned.bends.slice(bends.length)] };
		return [...shapeEnd(cutToFit(state, whole).shape).end];
	});
	const unknown = Math.sqrt(covariance.reduce((sum, row, i) => sum + row[i]!, 0));
	return [
		(offWith(state.plan.current) - offWith(drawingNumbers(state))) /
			Math.max(unknown, state.start.job.tolerance.length),
	];
}
