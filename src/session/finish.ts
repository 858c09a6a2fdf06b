import { setback } from '../tube/arcs.ts';
import { checkFits } from './advice.ts';
import { at, tubeAtWork } from './as-built.ts';
import { expectCheck, uncutTrim } from './check-reading.ts';
import { checkUnit } from './number-kinds.ts';
import type { Cut } from './protocol.ts';
import { show } from './show.ts';
import type { State } from './state.ts';

/** Where both ends of a finished tube are cut so that its legs come out as designed; start end first. */
export function cutsOf(state: State): Cut[] {
	const { shape, trimStart, trimEnd } = tubeAtWork(state, state.plan.current);
	const cut = (end: Cut['end'], off: number, leg: number, bend: number): Cut => {
		const { angle, radius } = at(shape.bends, bend - 1);
		const where = { end, off, bend, fromTangent: leg, fromCorner: leg + setback(angle, radius) };
		return { ...where, words: inWords(where, state.start.job.units) };
	};
	const last = shape.bends.length;
	// A piece that is too short leaves a leg that ends where the piece does.
	const first = at(shape.straights, 0) + Math.min(0, trimStart);
	return [cut('start', trimStart, first, 1), cut('far', trimEnd, at(shape.straights, last), last)];
}

/** What is left to be done and looked at before the tube leaves the bench, in the order of the work. */
export function finishList(state: State): string[] {
	return [
		...state.bends.flatMap(({ relievedFrom }, i) =>
			relievedFrom === null ? [] : [`Bend ${i + 1} was opened: look for flats and cracks, and ask the inspector.`],
		),
		...state.bends.flatMap((bend, i) => offTarget(state, bend, i + 1)),
		...state.design.checks.flatMap(({ check, design }) => checkLine(state, check.name, design)),
		'Deburr both ends inside and outside.',
	];
}

function inWords({ end, off, bend, fromTangent, fromCorner }: Omit<Cut, 'words'>, units: string): string {
	const of = (length: number) => `${show(length)} ${units}`;
	const where = end === 'start' ? `where bend ${bend} begins` : `where bend ${bend} ends`;
	const leg = `${of(fromTangent)} from ${where}, ${of(fromCorner)} from its corner`;
	const name = end === 'start' ? 'Start end' : 'Far end';
	return off < 0
		? `${name}: nothing to cut off, the leg is ${of(-off)} short: ${leg}.`
		: `${name}: cut off ${of(off)}: ${leg}.`;
}

function offTarget(state: State, { made, target }: State['bends'][number], number: number): string[] {
	const { under, over } = state.start.job.tolerance;
	if (made === null || (made.angle >= target - under && made.angle <= target + over)) return [];
	return [
		`Bend ${number} is ${show(made.angle, 2)} degrees, outside its tolerance: ${show(target, 2)} degrees were wanted.`,
	];
}

/** A check that was not read, or that is read otherwise once the ends are cut; one that is out. */
function checkLine(state: State, name: string, design: number): string[] {
	const { check } = at(
		state.design.checks.filter((due) => due.check.name === name),
		0,
	);
	const reading = state.checks[name]?.reading ?? null;
	const unit = checkUnit(check.kind, state.start.job.units);
	const should = `it should be ${show(design)}${unit}, within ${show(check.tolerance)}${unit}`;
	if (reading === null) {
		const value = expectCheck(state, name).value - uncutTrim(state, check);
		return [`Check ${name} was not read: ${should}; expected is ${show(value)}${unit}.`];
	}
	if (checkFits(state, name, reading) === false) return [`Check ${name} lies outside its tolerance: ${should}.`];
	const cut = Math.abs(uncutTrim(state, check)) > check.tolerance / 100;
	return cut ? [`Check ${name} once more when the ends are cut: ${should}.`] : [];
}
