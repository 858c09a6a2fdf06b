import { cutLength, type Mark, marks } from '../../../tube/marks.ts';
import { type Around, around, type TubeTurn, tubeTurn } from '../../../tube/turns.ts';
import { dieListWords } from '../../../words/dies.ts';
import { shownUnits, tapeValue } from '../../../words/lengths.ts';
import { angle, fine, tape } from '../../../words/numbers.ts';
import { tapeStrip } from '../../drawing/tape-strip.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { seamInBend, shortTurn } from '../set-words.ts';
import type { PageView, Room, Section } from './page.ts';

/** Common practice, no source. */
const ENDS =
	'Write START and FAR on the ends. Draw one straight line along the tube: marks go round from it, clockwise (cw) or counterclockwise (ccw) as seen from START to FAR.';
const SEAM = 'A welded seam goes to the side of bend 1, neither inside nor outside of the bend.';

/** The straight tube with the drawing's marks, before anything is bent; later marks are told from these. */
export function layOutPage(state: SessionState): PageView {
	return {
		title: 'Lay out the tube',
		prompt: {
			label: '',
			plus: { label: 'laid out, go on', step: { step: 'next' } },
			empty: 'Press + to go on.',
		},
		body: (room) => layoutSections(state, room),
	};
}

/** The marks, and how the tube is laid out. */
export function layoutSections(state: SessionState, room: Room): Section[] {
	const { bends, cut } = laidOut(state);
	return [
		{ rank: 3, wide: true, extra: true, lines: designStrip(state, room.columns) },
		{ rank: 0, lines: table(bends, state) },
		{ rank: 0, lines: wrapped(dieListWords(state.job), room.columns) },
		{ rank: 0, lines: wrapped(movedSince(state), room.columns, 'alert', 2) },
		{ rank: 1, lines: wrapped(ENDS, room.columns, 'plain', 2) },
		{ rank: 1, lines: [...wrapped(SEAM, room.columns, 'plain', 2), ...seam(bends, room)] },
		{
			rank: 2,
			lines: [line(`Cut length ${tape(cut, state.job)}, both trims in it. Marks in ${UNITS[shownUnits(state.job)]}.`)],
		},
	];
}

/** That these marks are not the ones to bend at, where they have been corrected; empty where they are. */
function movedSince({ corrected, set }: SessionState): string {
	const moved = corrected || (set !== null && set.mark.moved !== 0);
	return moved ? "! These are the drawing's marks; each bend's page has the one in force." : '';
}

/** The straight tube with the drawing's marks, as a tape along it shows them. */
export function designStrip(state: SessionState, columns: number): Line[] {
	const { bends, cut } = laidOut(state);
	const drawn = bends.map(({ bend, mark }) => ({
		at: mark.fromStart,
		bend,
		reading: tapeValue(mark.fromStart, state.job),
	}));
	return tapeStrip(cut, drawn, columns);
}

const UNITS = { in: 'inches', mm: 'millimeters' } as const;

interface Laid extends Around {
	bend: number;
	angle: number;
	mark: Mark;
	turn: TubeTurn;
}

/** The drawing's marks, as the layout prints them. */
function laidOut({ job, drawn: shape }: SessionState): { bends: Laid[]; cut: number } {
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
const WIDTHS = [10, 10, 12, 11];

function table(bends: readonly Laid[], { job }: SessionState): Line[] {
	const first = `bend ${bends.length}`.length;
	const row = (label: string, cells: readonly string[]) =>
		label.padEnd(first) + cells.map((text, at) => text.padStart(WIDTHS[at]!)).join('');
	const head = line(row('', ['START', 'FAR', 'round', 'turn']), 'quiet');
	return [
		head,
		...bends.map((bend): Line => {
			const { mark, turn } = bend;
			const cells = [
				tapeValue(mark.fromStart, job),
				tapeValue(mark.fromFarEnd, job),
				roundCell(bend, job),
				shortTurn(turn),
			];
			return [span(row(`bend ${bend.bend}`, cells)), span(`  to ${angle(bend.angle)}`, 'quiet')];
		}),
	];
}

function roundCell({ face, around }: Laid, job: SessionState['job']): string {
	if (face === 'same') return 'on the line';
	if (face === 'opposite') return 'opposite';
	const length = fine(Math.abs(around.length), job).replace(/ \w+$/, '');
	return `${length} ${around.degrees > 0 ? 'cw' : 'ccw'}`;
}

function seam(bends: readonly Laid[], { columns }: Room): Line[] {
	const near = bends.filter(({ around }) => seamInBend(around.degrees)).map(({ bend }) => bend);
	if (near.length === 0) return [];
	const which = near.length === 1 ? `bend ${near[0]}` : `bends ${near.slice(0, -1).join(', ')} and ${near.at(-1)}`;
	return wrapped(`There it comes to the inside or outside of ${which}.`, columns, 'alert', 2);
}
