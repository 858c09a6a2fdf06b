import { meanOf } from '../maths/list.ts';
/** What plots of a session show, as numbers. Degrees throughout. */
import { NINE_IN_TEN } from '../maths/normal.ts';
import type { State } from '../session/log/state.ts';
import { stages } from '../session/report/stages.ts';
import { pullSpread, reach } from '../springback/filter.ts';
import { type SpringbackPoint, springbackAt } from '../springback/learned-curve.ts';
import { NOTHING_SEEN, SCATTER_KINDS, type ScatterKind, varianceOf } from '../springback/scatter.ts';
import { atDie } from '../springback/several-dies.ts';
import { dieOf, diesAtWork } from '../tube/dies.ts';

/** One pull that was measured: the angle that it left by the angle finder, and how far the dial had gone beyond it. */
export interface PullPoint {
	bend: number;
	angle: number;
	back: number;
}

/** What one die was believed to do before this session's first pull. */
export interface DieBand {
	die: string;
	/** The bends that are bent on it, from 1. */
	bends: readonly number[];
	/** With the band that nine tubes of ten lie in, over the angles of those bends. */
	band: readonly SpringbackPoint[];
}

export interface SpringbackPlot {
	/** One a die, in the order in which they are put in. */
	dies: readonly DieBand[];
	pulls: readonly PullPoint[];
}

/** How many places the learned band is worked out at. */
const BAND_PLACES = 16;
/** The band reaches so far beyond the angles of the tube, as a part of them. */
const BAND_BEYOND = 0.2;

export function springbackPlot(state: State): SpringbackPlot {
	const { job, prior } = state.start;
	const pulls = measuredPulls(state).map(({ bend, loaded, landed }) => {
		return { bend, angle: landed, back: loaded - landed };
	});
	const all = state.design.shape.bends.map(({ angle }, i) => ({ bend: i + 1, angle }));
	const dies = diesAtWork(job).map((die): DieBand => {
		const on = all.filter(({ bend }) => dieOf(job, bend) === die);
		const angles = [...on, ...pulls.filter(({ bend }) => dieOf(job, bend) === die)].map(({ angle }) => angle);
		const [from, to] = [(1 - BAND_BEYOND) * Math.min(...angles), (1 + BAND_BEYOND) * Math.max(...angles)];
		const at = Array.from({ length: BAND_PLACES }, (_, i) => from + ((to - from) * i) / (BAND_PLACES - 1));
		return { die, bends: on.map(({ bend }) => bend), band: springbackAt(atDie(prior, die), at) };
	});
	return { dies, pulls };
}

interface MeasuredPull {
	entry: number;
	bend: number;
	stop: number;
	loaded: number;
	/** The mean of the angle finder's readings before it was pulled or opened again. */
	landed: number;
}

function measuredPulls({ bends }: State): MeasuredPull[] {
	return bends.flatMap(({ pulls }, i) =>
		pulls.flatMap((pull): MeasuredPull[] => {
			const [readings = []] = stages(pull);
			if (readings.length === 0) return [];
			const landed = meanOf(readings);
			return [{ entry: pull.entry, bend: i + 1, stop: pull.stop, loaded: pull.loaded, landed }];
		}),
	);
}

/** A pull that was measured, against where its stop was expected to leave the bend; `low` to `high`: nine in ten land there. */
export interface LandedPoint {
	bend: number;
	/** Landed less expected. */
	off: number;
	low: number;
	high: number;
}

/** In the order pulled. `states`: the session as it began and after each line of its log. */
export function landedPlot(states: readonly State[]): LandedPoint[] {
	const last = states.at(-1);
	const pulls = last === undefined ? [] : measuredPulls(last).toSorted((a, b) => a.entry - b.entry);
	return pulls.flatMap(({ entry, bend, stop, landed }) => {
		const filter = states[entry - 1]?.filter;
		if (filter === undefined) return [];
		const { mean, variance } = reach(filter, stop);
		const half = NINE_IN_TEN * pullSpread(filter, variance);
		return [{ bend, off: landed - mean, low: -half, high: half }];
	});
}

/** How one kind of hand or instrument scatters, standard deviations: in any shop, as believed before the session, and now. */
export interface ScatterPoint {
	kind: ScatterKind;
	common: number;
	before: number;
	now: number;
}

export function scatterPlot({ start, filter }: State): ScatterPoint[] {
	return SCATTER_KINDS.map((kind) => ({
		kind,
		common: Math.sqrt(varianceOf(kind, NOTHING_SEEN)),
		before: Math.sqrt(varianceOf(kind, start.prior.scatter)),
		now: Math.sqrt(varianceOf(kind, filter.scatter)),
	}));
}

/** What one bend of a session came to: made less wanted, null where it was not taken; and its pulls. */
export interface BendFigure {
	error: number | null;
	pulls: number;
}

export function bendFigures({ bends }: State): BendFigure[] {
	return bends.map(({ made, target, pulls }) => ({
		error: made === null ? null : made.angle - target,
		pulls: pulls.length,
	}));
}

/** Several sessions of one job, the oldest first; the last is the one in hand. */
export type Sessions = readonly (readonly BendFigure[])[];

/** The mean number of pulls of the bends that were pulled, session by session; null where none was. */
export function meanPulls(sessions: Sessions): (number | null)[] {
	return sessions.map((bends) => {
		const pulled = bends.filter(({ pulls }) => pulls > 0);
		return pulled.length === 0 ? null : meanOf(pulled.map(({ pulls }) => pulls));
	});
}
