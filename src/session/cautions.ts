import { foresee } from '../springback/foresight.ts';
import { bentAsWords } from '../tube/bent-as.ts';
import type { Units } from '../tube/job.ts';
import { type Swing, swing } from '../tube/swing.ts';
import { around } from '../tube/turns.ts';
import { formatLength } from '../units/format.ts';
import { at, endBefore, tubeAtWork } from './as-built.ts';
import { stopRequest } from './bend-check.ts';
import { show } from './show.ts';
import type { State } from './state.ts';
import { bendAt } from './state.ts';
import { tellingPays } from './worth-telling.ts';

/** Shown before the first pull of every session. */
export const GENERAL_CAUTIONS: readonly string[] = [
	'Pinch points: keep hands clear of die, follower and clamp while the bender moves.',
	'Hydraulic pressure: no body part near hoses or couplings; release the pressure before touching the tooling.',
	'Tube springing: the tube swings and springs back; stand out of its way, and keep others out.',
	'Cut edges are sharp: deburr before handling.',
	'Roll structures follow their rule book and need inspection. This program certifies nothing; local codes and licensed practice come first.',
];

/** Shown before a bend is opened. */
export const RELIEF_CAUTION =
	'Open a bend a little at a time. Some rule books do not allow a bend to be worked back: ask the inspector. Afterwards look for flats and cracks.';

/** What to mind at this seat. */
export function cautionsAt(state: State): string[] {
	const bend = bendAt(state, state.bend);
	const first = state.bends.every((b) => b.seats === 0);
	const cautions = first
		? [...GENERAL_CAUTIONS, `Cut length: ${formatLength(state.piece, state.start.job.units)}, both trims in it.`]
		: [];
	const as = bentAsWords(state.start.job);
	if (first && as !== null) cautions.push(as);
	if (first && state.plan.note?.after === 'growth') {
		cautions.push(
			`The radius is expected to come out ${((state.start.growth - 1) * 100).toFixed(1)} % larger than the die's: the marks are planned for that. Give the length of the piece as really cut.`,
		);
	}
	const narrow = first ? narrowCaution(state) : null;
	if (narrow !== null) cautions.push(narrow);
	const rotations = state.plan.current.map((numbers) => numbers.rotation);
	if (bend.seats === 0 && state.bend > 1 && around(state.start.job, rotations, state.bend).face === 'opposite') {
		cautions.push('The mark goes on the opposite face of the tube from bend 1.');
	}
	const pays = tellingPays(state);
	if (pays !== null) cautions.push(pays);
	cautions.push(...roomCautions(state));
	if (bend.seats === 0) cautions.push(swingCaution(state));
	if (bend.seats > 0)
		cautions.push(
			"Seat the tube at the same mark and in the same plane as before; keep it level. Don't move the dial.",
		);
	return cautions;
}

/** From so many pulls a bend on it is said beforehand what the band costs. */
const MANY_PULLS = 4;

/** What a narrow band will cost, and what band this shop holds in two pulls; null where it costs no more than usual. */
function narrowCaution(state: State): string | null {
	const { pulls, risk, holds } = foresee(state.filter, stopRequest(state));
	if (pulls < MANY_PULLS) return null;
	const { under, over } = state.start.job.tolerance;
	const band = under === over ? `±${show(under, 2)}` : `-${show(under, 2)} to +${show(over, 2)}`;
	const past = Math.max(1, Math.round(100 * risk));
	return `${band} degrees is a narrow band for this shop: count on up to ${Math.round(pulls)} pulls a bend, with about ${past} bends in 100 going over. In two pulls a bend it holds about ±${show(holds, 2)}.`;
}

/** Where the plan leaves less straight tube than the machine needs at this bend. */
function roomCautions(state: State): string[] {
	const { clamp, follow } = state.start.job.tooling;
	const bend = bendAt(state, state.bend);
	const mark = bend.mark ?? at(state.plan.current, state.bend - 1).fromStart;
	const before = mark - endBefore(state, state.bend);
	const behind = state.piece - tubeAtWork(state, state.plan.current).used;
	const { units } = state.start.job;
	const of = (length: number) => `${show(length)} ${units}`;
	const short =
		before < clamp ? [`The clamp needs ${of(clamp)} of straight tube before the mark; there is ${of(before)}.`] : [];
	if (state.bend < state.bends.length || behind >= follow) return short;
	return [...short, `${of(follow)} of straight tube must lie behind the bend; there will be ${of(behind)}.`];
}

/** What to keep clear of the made part, which turns with the die. */
function swingCaution(state: State): string {
	const { units, tube, tooling } = state.start.job;
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const room = swing(shape, state.bend, { od: tube.od, trim: Math.max(0, trimStart) });
	const deepest = Math.max(room.above, room.below);
	const floor =
		tooling.floor !== null && deepest > tooling.floor
			? ` The floor is ${formatLength(tooling.floor, units)} below that plane.`
			: '';
	return `Swing: the part beyond the clamp reaches ${clearance(room.reach, units)} from the die's centre${heights(room, tube.od, units)}.${floor}`;
}

/** Where the part leaves the machine's plane: a flat tube lies in it. */
function heights({ above, below }: Swing, od: number, units: Units): string {
	const [up, down] = [above, below].map((height) => (height > od ? height : null)) as [number | null, number | null];
	if (up === null && down === null) return '';
	const parts = [
		...(up === null ? [] : [`${clearance(up, units)} above`]),
		...(down === null ? [] : [`${clearance(down, units)} below`]),
	];
	return ` and ${parts.join(' and ')} the machine's plane with the die to the left of the tube, looking from the clamp; with the die to the right it is the other way up`;
}

/** Rounded up: nothing may stand nearer. */
function clearance(length: number, units: Units): string {
	const step = units === 'in' ? 1 : 10;
	return formatLength(Math.ceil(length / step) * step, units);
}
