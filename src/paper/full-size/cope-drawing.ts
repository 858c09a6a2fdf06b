import type { CopeTemplate } from '../../tube/cope-template.ts';
import type { Job } from '../../tube/job.ts';
import type { Flat } from '../../tube/planes.ts';
import { convertLength } from '../../units/units.ts';
import { FULL_SIZE, insideLabel, templateWords } from '../../words/full-size.ts';
import { boxOf, type Drawing, type DrawnNote, type PenStroke, penLine } from './drawing.ts';
import { crossMark, onward } from './flat.ts';
import { sides, toFar } from './template-parts.ts';

/** In mm: paper behind the deepest point of the cut, and what a spot's cross measures. */
const BAND = 30;
const SPOT = 2;

/** The drawing's end is drawn where it lies this near to the template, mm. */
const NEAR = 15;

/** A cope's template at full size, the far end of the tube up. `words`: what is said of it, to stand beside the drawing. */
export function copeDrawing(template: CopeTemplate, job: Job): { drawing: Drawing; words: readonly string[] } {
	const mm = convertLength(1, job.units, 'mm');
	const { end, outer, longest, deepest, joint, bend } = template;
	const up = end === 'far' ? 1 : -1;
	const place = ([round, out]: Flat): Flat => [round * mm, up * out * mm];
	const round = template.round * mm;
	const cut = outer.map(place);
	const { low, high } = boxOf(cut);
	// The straight edge lies behind the deepest place, into the tube.
	const edge = end === 'far' ? low - BAND : high + BAND;
	const [first, last] = [cut[0]!, cut.at(-1)!];
	const guide = (x: number) => penLine('guide', [x, edge], [x, heightAt(cut, x)]);
	const endShown = Math.max(-high, low) < NEAR;
	const spots = [place(longest), place(deepest)];
	const arrow = toFar(round, Math.min(edge, edge + up * 12) + 2);
	const strokes: PenStroke[] = [
		penLine('edge', ...(cut as [Flat, ...Flat[]])),
		penLine('edge', first, [0, edge], [round, edge], last),
		...sides(round, Math.min(edge, last[1]), Math.max(edge, last[1])),
		guide(joint * mm),
		...(isOnSide(bend.round * mm, round) ? [] : [guide(bend.round * mm)]),
		...spots.flatMap((spot) => crossMark(spot, SPOT)),
		...arrow.strokes,
		...(endShown ? [penLine('guide', [0, 0], [round, 0])] : []),
	];
	const into = (by: number): number => edge + up * by;
	const notes: DrawnNote[] = [
		{ at: [1, into(4)], away: [1, 0], text: FULL_SIZE.one },
		...arrow.notes,
		noteBeside(joint * mm, into(16), round, FULL_SIZE.joint),
		...(isOnSide(bend.round * mm, round) ? [] : [noteBeside(bend.round * mm, into(22), round, insideLabel(bend.bend))]),
		...(endShown ? [{ at: [round, up * 1.5] as const, away: [-1, 0] as const, text: FULL_SIZE.drawingsEnd }] : []),
		{ at: onward(spots[0]!, -up * 3, [0, 1]), away: [0, -up], text: FULL_SIZE.longest },
		{ at: onward(spots[1]!, -up * 3, [0, 1]), away: [0, -up], text: FULL_SIZE.deepest },
	];
	return {
		drawing: { strokes, notes },
		words: templateWords(template, { job, edge: fromTubeEnd(edge, template, job) }),
	};
}

/** How far the straight edge lies from the end of the tube as it is cut, in the job's unit. */
function fromTubeEnd(edge: number, { end }: CopeTemplate, { trim, units }: Job): number {
	return (end === 'far' ? trim.end : trim.start) + Math.abs(convertLength(edge, 'mm', units));
}

/** Whether a line along the tube is the template's side. */
const isOnSide = (x: number, round: number): boolean => Math.min(x, round - x) < 0.1;

/** The cut's height over a place round the tube. */
function heightAt(cut: readonly Flat[], x: number): number {
	const next = Math.max(
		1,
		cut.findIndex(([round]) => round >= x),
	);
	const [before, after] = [cut[next - 1]!, cut[next]!];
	const part = (x - before[0]) / (after[0] - before[0]);
	return before[1] + part * (after[1] - before[1]);
}

/** Words beside a line along the tube, on the side where there is more room. */
function noteBeside(x: number, y: number, round: number, text: string): DrawnNote {
	const side = x < round / 2 ? 1 : -1;
	return { at: [x + side, y], away: [side, 0], text };
}
