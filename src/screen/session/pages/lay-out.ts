import { cutLength, type Mark, marks } from '../../../tube/marks.ts';
import { type Around, around, type TubeTurn, tubeTurn } from '../../../tube/turns.ts';
import { bendName } from '../../../words/bend-name.ts';
import { dieListWords } from '../../../words/dies.ts';
import { tapeValue } from '../../../words/lengths.ts';
import { bendTo, cutWords, LAY_OUT, roundBrief, seamAt } from '../../../words/session/lay-out.ts';
import { shortTurn } from '../../../words/session/mark.ts';
import { tapeStrip } from '../../drawing/tape-strip.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import type { PageView, Room, Section } from './page.ts';
import { seamInBend } from './set-up.ts';

/** The straight tube with the drawing's marks, before anything is bent; later marks are told from these. */
export function layOutPage(state: SessionState): PageView {
	return {
		title: LAY_OUT.title,
		prompt: { label: '', plus: { label: LAY_OUT.plus, step: { step: 'next' } }, empty: LAY_OUT.empty },
		body: (room) => layoutSections(state, room),
	};
}

/** The marks, and how the tube is laid out. */
export function layoutSections(state: SessionState, room: Room): Section[] {
	const { bends, cut } = laidBends(state);
	return [
		{ rank: 3, wide: true, extra: true, lines: designStrip(state, room.columns) },
		{ rank: 0, lines: layoutTable(bends, state) },
		{ rank: 0, lines: wrapped(dieListWords(state.job), room.columns) },
		{ rank: 0, lines: wrapped(movedSince(state), room.columns, 'alert', 2) },
		{ rank: 1, lines: wrapped(LAY_OUT.ends, room.columns, 'plain', 2) },
		{ rank: 1, lines: [...wrapped(LAY_OUT.seam, room.columns, 'plain', 2), ...seamsNear(bends, room)] },
		{ rank: 2, lines: [line(cutWords(cut, state.job))] },
	];
}

/** That these marks are not the ones to bend at, where they have been corrected; empty where they are. */
function movedSince({ corrected, set }: SessionState): string {
	const moved = corrected || (set !== null && set.mark.moved !== 0);
	return moved ? LAY_OUT.moved : '';
}

/** The straight tube with the drawing's marks, as a tape along it shows them. */
export function designStrip(state: SessionState, columns: number): Line[] {
	const { bends, cut } = laidBends(state);
	const drawn = bends.map(({ bend, mark }) => ({
		at: mark.fromStart,
		bend,
		reading: tapeValue(mark.fromStart, state.job),
	}));
	return tapeStrip(cut, drawn, columns);
}

interface Laid extends Around {
	bend: number;
	angle: number;
	mark: Mark;
	turn: TubeTurn;
}

/** The drawing's marks, as the layout prints them. */
function laidBends({ job, drawn: shape }: SessionState): { bends: Laid[]; cut: number } {
	const cut = cutLength(job, shape);
	const rotations = shape.bends.map(({ rotation }) => rotation);
	const all = marks(job, shape, cut);
	const bends = shape.bends.map(({ angle, rotation }, at) => {
		const bend = at + 1;
		return { bend, angle, mark: all[at]!, turn: tubeTurn(rotation, bend), ...around(job, rotations, bend) };
	});
	return { bends, cut };
}

/** Of all columns but the first: with an angle of three digits and a tenth a row of nine bends is 60 wide. */
const CELL_WIDTHS = [10, 10, 12, 11];

function layoutTable(bends: readonly Laid[], { job }: SessionState): Line[] {
	const first = bendName(bends.length).length;
	const row = (label: string, cells: readonly string[]) =>
		label.padEnd(first) + cells.map((text, at) => text.padStart(CELL_WIDTHS[at]!)).join('');
	const head = line(row('', LAY_OUT.heads), 'quiet');
	return [
		head,
		...bends.map((bend): Line => {
			const { mark, turn } = bend;
			const cells = [
				tapeValue(mark.fromStart, job),
				tapeValue(mark.fromFarEnd, job),
				roundBrief(bend, job),
				shortTurn(turn),
			];
			return [span(row(bendName(bend.bend), cells)), span(`  ${bendTo(bend.angle)}`, 'quiet')];
		}),
	];
}

function seamsNear(bends: readonly Laid[], { columns }: Room): Line[] {
	const near = bends.filter(({ around }) => seamInBend(around.degrees)).map(({ bend }) => bend);
	return near.length === 0 ? [] : wrapped(seamAt(near), columns, 'alert', 2);
}
