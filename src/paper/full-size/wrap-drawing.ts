import type { Job } from '../../tube/job.ts';
import type { Flat } from '../../tube/planes.ts';
import { roundLength, type WrapStrip } from '../../tube/wraps.ts';
import { convertLength } from '../../units/units.ts';
import { insideLabel, markNumberLabel, stripWords } from '../../words/full-size.ts';
import { type Drawing, type DrawnNote, type PenStroke, penLine } from './drawing.ts';
import { GLUE_TAB, sides, toFar } from './template-parts.ts';

/** In mm: a strip along the tube on either side of its mark, what its words take over it, what keeps two apart. */
const HALF = 12;
const WORDS = 8;
const APART = 6;

/** From one strip to the next. */
export const STRIP_PITCH = 2 * HALF + WORDS + APART;

const DEGREE_TICKS = { every: 10, long: 90, short: 1.5, tall: 3 } as const;

/** Strips at full size, one under the other, the far end of the tube up. */
export function wrapDrawing(strips: readonly WrapStrip[], job: Job): Drawing {
	const drawn = strips.map((strip, i) => stripDrawing(strip, job, -i * STRIP_PITCH));
	return { strokes: drawn.flatMap(({ strokes }) => strokes), notes: drawn.flatMap(({ notes }) => notes) };
}

function stripDrawing(strip: WrapStrip, job: Job, middle: number): Drawing {
	const mm = convertLength(1, job.units, 'mm');
	const round = roundLength(job.tube) * mm;
	const { degrees } = strip.around;
	const inside = ((degrees < 0 ? degrees + 360 : degrees) / 360) * round;
	const at = (x: number, up: number): Flat => [x, middle + up];
	const arrow = toFar(round, middle - HALF + 1, inside);
	const strokes: PenStroke[] = [
		penLine('edge', at(0, -HALF), at(round, -HALF), at(round, HALF), at(0, HALF), at(0, -HALF)),
		...sides(round, middle - HALF, middle + HALF),
		penLine('mark', at(0, 0), at(round, 0)),
		...insideLines(inside, round).map((x) => penLine('mark', at(x, -HALF), at(x, HALF))),
		...wrapTicks(round, middle),
		...arrow.strokes,
	];
	const notes: DrawnNote[] = [
		...stripWords(strip, job).map((text, i): DrawnNote => ({ at: at(0, HALF + 5.5 - 3.5 * i), away: [1, 0], text })),
		{
			at: at(inside < round / 2 ? inside + 1 : inside - 1, HALF / 2),
			away: [inside < round / 2 ? 1 : -1, 0],
			text: insideLabel(strip.bend),
		},
		...arrow.notes,
		{ at: at(round + GLUE_TAB / 2, 0), away: [0, 0], text: markNumberLabel(strip.bend), bold: true },
	];
	return { strokes, notes };
}

/** The line of a bend's inside; where that is bend 1's, it lies at both ends of the strip. */
function insideLines(inside: number, round: number): number[] {
	const near = 1e-6 * round;
	return inside < near || inside > round - near ? [0, round] : [inside];
}

/** Degrees round the tube, along the mark. */
function wrapTicks(round: number, middle: number): PenStroke[] {
	return Array.from({ length: 360 / DEGREE_TICKS.every - 1 }, (_, i) => {
		const degrees = (i + 1) * DEGREE_TICKS.every;
		const tall = degrees % DEGREE_TICKS.long === 0 ? DEGREE_TICKS.tall : DEGREE_TICKS.short;
		const x = (degrees / 360) * round;
		return penLine('thin', [x, middle - tall], [x, middle + tall]);
	});
}
