import type { Predicted } from '../../../session/protocol/asks.ts';
import type { CorrectedNote } from '../../../session/protocol/notes.ts';
import { padded } from '../../../terminal/width.ts';
import { checkValue } from '../../../tube/checks.ts';
import { angle, fine, measureOf, shown } from '../../../words/numbers.ts';
import { FINISHED, surenessWords } from '../../../words/session/corrected.ts';
import { cornerOff, endOff } from '../../../words/session/done.ts';
import { cutLine, type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import type { Section } from './page.ts';
import { FULL_WIDTH } from './page.ts';

/**
 * What the tube will be by the drawing's numbers and now, its farthest corner, and how likely it fits, in `room` rows. Where a table of all has no
 * room, its first rows are told in a sentence; then the last checks are what a larger window is wanted for.
 */
export function finishedTube(state: SessionState, note: CorrectedNote, columns: number, room: number): Section[] {
	const { predicted } = note;
	const { job } = state;
	const { heads, ends, checks } = finishedTable(state, note, columns);
	const { whole, brief, fits, least } = surenessWords(note, job);
	const corner = wrapped(cornerOff(predicted.shape, job), columns);
	const table = [heads, ...ends, ...checks, ...corner];
	const sure = [whole, brief]
		.map((text) => wrapped(text, columns))
		.find((lines) => table.length + lines.length <= room);
	if (sure !== undefined) {
		return [
			{ rank: 1, lines: table },
			{ rank: 2, lines: sure },
		];
	}
	const end = wrapped(endOff(predicted, job), columns);
	const chance = wrapped(fits, columns);
	const left = room - end.length - corner.length - chance.length - 1;
	const most = Math.max(0, left);
	const inOne = corner.length + chance.length > room;
	return [
		{ rank: 3, lines: left > 0 && checks.length > 0 ? [heads, ...checks.slice(0, most)] : [] },
		{ rank: 2, lines: end },
		{ rank: 1, lines: inOne ? wrapped(least, columns) : [...corner, ...chance] },
		{ rank: 4, lines: checks.slice(most) },
	];
}

/** The narrowest that a number's column and a row's name may be, and the widest. */
const VALUE_WIDTH = 15;
const LEAST_NAME = 22;
const WIDEST_NAME = 30;

/** By the drawing, uncorrected and now; once no bend is left there is nothing to compare. */
function finishedTable(state: SessionState, { remaining, predicted, without }: CorrectedNote, columns: number) {
	const { job } = state;
	const left = remaining.length > 0;
	const width = Math.min(VALUE_WIDTH, Math.floor((columns - LEAST_NAME) / 3));
	const name = columns < FULL_WIDTH ? columns - 3 * width : WIDEST_NAME;
	const row = (label: string, drawing: string, of: (which: Predicted) => string): Line => [
		...cutLine([span(padded(label, name))], name),
		span(drawing.padStart(width)),
		...(left ? [span(of(without).padStart(width))] : []),
		span(of(predicted).padStart(width), 'strong'),
	];
	const { drawing, uncorrected, now, made } = FINISHED.heads;
	const heads = [drawing, ...(left ? [uncorrected, now] : [made])].map((text) => text.padStart(width));
	return {
		heads: line(`${FINISHED.title.padEnd(name)}${heads.join('')}`, 'quiet'),
		ends: [
			row(FINISHED.end, fine(0, job), (which) => fine(which.endOffset, job)),
			row(FINISHED.direction, angle(0), (which) => angle(which.endAngle)),
		],
		checks: designChecks(state).flatMap(({ name: check, design }) => {
			const measure = measureOf('check', job, check);
			const known = predicted.checks.some((each) => each.name === check);
			const value = (which: Predicted) => which.checks.find((each) => each.name === check)?.value;
			const text = (number: number | undefined) => (number === undefined ? '-' : shown(number, measure, job));
			return known ? [row(check, text(design), (which) => text(value(which)))] : [];
		}),
	};
}

function designChecks({ job, drawn }: SessionState): { name: string; design: number }[] {
	return job.checks.map((check) => ({ name: check.name, design: checkValue(check, drawn, job.tube) }));
}
