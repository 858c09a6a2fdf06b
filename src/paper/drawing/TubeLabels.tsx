import { Line } from '@react-pdf/renderer';
import { Fragment } from 'react';
import { arcPoints, centerLine } from '../../tube/center-line.ts';
import type { Frames } from '../../tube/frames.ts';
import type { View } from '../../tube/principal-views.ts';
import { combine, cross } from '../../tube/vector.ts';
import { END_LABELS } from '../../words/round.ts';
import { useTypeface } from '../Words.tsx';
import { Label } from './Label.tsx';
import { type LabelBox, type LabelWish, labelPlaces } from './label-places.ts';
import { seenIn, type ViewPlace } from './tube-pieces.ts';

/** A view of a tube, and where its places lie on the page. */
export interface Placing {
	at: Frames;
	od: number;
	view: View;
	scale: number;
	place: (flat: ViewPlace) => ViewPlace;
}

export interface TubeLabelsProps extends Placing {
	/** Where labels may stand, and what stands there already. */
	field: LabelBox;
	taken: readonly LabelBox[];
}

/** Size of the numbers of the bends, and of the word at the end that is told from. */
const NUMBER = { size: 7, bold: true };
const SMALL = { size: 5.5 };
/** From the foot of a digit to its head, in sizes of the letters. */
const HIGH = 0.8;
const ARC_STEPS_TOUCHED = 8;
/** Bends that are seen this near to each other are told together. */
const ONE_PLACE = 3;

interface ToldLabel extends LabelWish {
	text: string;
	style: { size: number; bold?: boolean };
}

/** The number of each bend beside it, away from its center, and where the tube starts; each where it stands on nothing else. */
export function TubeLabels({ field, taken, ...placing }: TubeLabelsProps) {
	const type = useTypeface();
	const { at, od, view, scale, place } = placing;
	const sized = ({ text, style, ...spot }: Omit<ToldLabel, 'width' | 'height'>): ToldLabel => {
		return { text, style, ...spot, width: type.width(text, style), height: HIGH * style.size };
	};
	const told = [...bendNumberLabels(placing).map(sized), sized(startLabel(placing))];
	const half = (od / 2) * scale;
	const tube = { line: centerLine(at, ARC_STEPS_TOUCHED).map(seenIn(view)).map(place), half: half + 1 };
	const places = labelPlaces(told, half, { lines: [tube], boxes: taken, field });
	return told.map(({ text, style }, i) => {
		const { x, y, lead } = places[i]!;
		return (
			<Fragment key={text}>
				{lead && (
					<Line
						{...{ x1: lead[0][0], y1: lead[0][1], x2: lead[1][0], y2: lead[1][1] }}
						strokeWidth={0.35}
						stroke="#000"
					/>
				)}
				<Label x={x} y={y} text={text} {...style} />
			</Fragment>
		);
	});
}

function bendNumberLabels({ at, view, place }: Placing) {
	const seen = seenIn(view);
	const spots: { at: ViewPlace; toward: ViewPlace; numbers: number[] }[] = [];
	for (const [i, arc] of at.arcs.entries()) {
		const middle = place(seen(arcPoints(arc, 2)[1]!));
		const same = spots.find((spot) => Math.hypot(spot.at[0] - middle[0], spot.at[1] - middle[1]) < ONE_PLACE);
		if (same !== undefined) same.numbers.push(i + 1);
		else spots.push({ at: middle, toward: away(place(seen(arc.center)), middle), numbers: [i + 1] });
	}
	return spots.map(({ numbers, ...spot }) => ({ ...spot, text: numbers.join(', '), style: NUMBER }));
}

/** From one place to another as a unit vector; up, where they are one. */
function away(from: ViewPlace, to: ViewPlace): ViewPlace {
	const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
	const long = Math.hypot(dx, dy);
	return long < 0.5 ? [0, -1] : [dx / long, dy / long];
}

/** At the start end, on the side that bend 1 bends to, where its number does not stand. */
function startLabel({ at, view, place }: Placing) {
	const seen = seenIn(view);
	const { start, direction } = at.straights[0]!;
	const from = place(seen(start));
	const inside = place(seen(combine(1, start, 1, cross(at.arcs[0]!.binormal, direction))));
	return { at: from, toward: away(from, inside), text: END_LABELS.start, style: SMALL };
}
