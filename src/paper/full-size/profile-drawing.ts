import type { EndName, Job } from '../../tube/job.ts';
import type { Mark } from '../../tube/marks.ts';
import type { Flat } from '../../tube/planes.ts';
import type { Across, Profile, ProfileBend } from '../../tube/profile.ts';
import { distance } from '../../tube/vector.ts';
import { convertLength } from '../../units/units.ts';
import {
	bendLabel,
	copeLabel,
	cornerLabel,
	markLabel,
	planeEndLabel,
	straightLabel,
	tangentLabel,
} from '../../words/full-size.ts';
import { tape } from '../../words/numbers.ts';
import { curve, type Drawing, type DrawnNote, type PenStroke, penLine } from './drawing.ts';
import { crossMark, noteBeyond, onward, reversed, toward, WORD_GAP } from './flat.ts';

/**
 * In mm: half of a corner's cross, what a mark's line is longer than the tube is thick, the shortest straight that is named, and what keeps
 * words off the tube.
 */
const CROSS = 4;
const BEYOND = 3;
const LEAST_NAMED = 25;

/** What a drawing of a job is made with. */
interface Scaling {
	job: Job;
	marks: readonly Mark[];
	/** The tube's diameter in mm. */
	od: number;
	/** A place of the plane in mm. */
	scaled(place: Flat): Flat;
}

/** The tube in one plane at full size, the base line to the right. `marks`: of all bends of the tube. */
export function profileDrawing(profile: Profile, job: Job, marks: readonly Mark[]): Drawing {
	const mm = convertLength(1, job.units, 'mm');
	const by: Scaling = { job, marks, od: job.tube.od * mm, scaled: ([x, y]) => [x * mm, y * mm] };
	const { lines, bends } = profile;
	const tube = lines.map(({ what, curve: drawn }) => curve(what === 'center' ? 'center' : 'edge', drawn, mm));
	const ends = (['start', 'far'] as const).flatMap((end) => endStrokes(end, profile, by));
	const parts = bends.map((bend) => bendParts(bend, by));
	return {
		strokes: [...tube, ...ends, ...parts.flatMap(({ strokes }) => strokes)],
		notes: [...straightNotes(profile, by), ...endNotes(profile, by), ...parts.flatMap(({ notes }) => notes)],
	};
}

/** An end that is cut square; of a coped one the cut, and where the drawing's end lies. */
function endStrokes(end: EndName, { starts, stops, copes }: Profile, { scaled }: Scaling): PenStroke[] {
	const { from, to } = end === 'start' ? starts : stops;
	const cope = copes.find((each) => each.end === end);
	if (cope === undefined) return [penLine('edge', scaled(from), scaled(to))];
	const [near, behind] = [cope.near, cope.behind].map((places) => places.map(scaled) as [Flat, ...Flat[]]);
	return [penLine('guide', scaled(from), scaled(to)), penLine('edge', ...near!), penLine('guide', ...behind!)];
}

function bendParts({ bend, angle, begins, ends, corner, center, middle, mark }: ProfileBend, by: Scaling): Drawing {
	const drawn = mark && beyondEdges(scaledAcross(mark, by));
	const at = by.scaled(corner);
	const inwards = toward(by.scaled(middle), by.scaled(center));
	const tangents = [
		{ ...scaledAcross(begins, by), text: tangentLabel(bend, 'begins') },
		{ ...scaledAcross(ends, by), text: tangentLabel(bend, 'ends') },
	];
	const strokes: PenStroke[] = [
		...tangents.map(({ from, to }) => penLine('thin', from, to)),
		...crossMark(at, CROSS),
		...(drawn ? [penLine('mark', drawn.from, drawn.to)] : []),
	];
	const notes: DrawnNote[] = [
		...tangents.map(({ from, to, text }) => noteBeyond(from, to, text)),
		{ at: onward(at, -CROSS, inwards), away: reversed(inwards), text: cornerLabel(bend) },
		{
			at: onward(by.scaled(middle), by.od / 2 + WORD_GAP, inwards),
			away: inwards,
			text: bendLabel(bend, angle),
			bold: true,
		},
	];
	if (drawn) {
		const reading = tape(by.marks[bend - 1]!.fromStart, by.job);
		notes.push({ ...noteBeyond(drawn.to, drawn.from, markLabel(bend, reading)), bold: true });
	}
	return { strokes, notes };
}

const scaledAcross = ({ from, to }: Across, { scaled }: Scaling): Across => ({ from: scaled(from), to: scaled(to) });

function beyondEdges({ from, to }: Across): Across {
	const side = toward(from, to);
	return { from: onward(from, -BEYOND, side), to: onward(to, BEYOND, side) };
}

/** The length of each straight that has room for it, in the middle of the tube. */
function straightNotes({ plane: { bends, straights, flat } }: Profile, { job, scaled }: Scaling): DrawnNote[] {
	return straights.flatMap(({ start, end }, i): DrawnNote[] => {
		const [from, to] = [scaled(flat(start)), scaled(flat(end))];
		if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LEAST_NAMED) return [];
		const middle: Flat = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
		return [{ at: middle, away: [0, 0], text: straightLabel(bends[0] + i, distance(start, end), job) }];
	});
}

/** What lies at the two ends of the drawing, told beyond what is drawn there. */
function endNotes({ plane, starts, stops, copes }: Profile, by: Scaling): DrawnNote[] {
	const { bends, straights, flat } = plane;
	const [first, last] = [straights[0]!, straights.at(-1)!];
	const note = (end: EndName, { from, to }: Across, inner: Flat): DrawnNote => {
		const middle = by.scaled([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
		const out = toward(inner, middle);
		const cope = copes.find((each) => each.end === end);
		const reach = (cope?.near ?? []).concat(cope?.behind ?? []).map(by.scaled);
		const past = Math.max(0, ...reach.map(([x, y]) => (x - middle[0]) * out[0] + (y - middle[1]) * out[1]));
		const said = planeEndLabel(end, end === 'start' ? bends[0] : bends[1], by.marks.length);
		if (cope === undefined) return noteBeyond(middle, inner, said);
		// Words stand level on the page, however the drawing is turned: clear of the higher end of the line across.
		return noteBeyond(onward(middle, Math.max(past, by.od / 4), out), inner, `${said}, ${copeLabel(by.job, end)}`);
	};
	return [note('start', starts, by.scaled(flat(first.end))), note('far', stops, by.scaled(flat(last.start)))];
}
