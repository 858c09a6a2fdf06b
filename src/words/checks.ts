import type { Axis, Check, CornerName, StraightPlace, WidthSurface } from '../tube/job.ts';
import type { Ruled } from './lengths.ts';
import { notNothing } from './numbers.ts';

export function cornerWords(name: CornerName): string {
	if ('bend' in name) return `the corner of bend ${name.bend}`;
	return name.end === 'start' ? 'the start end' : 'the far end';
}

function straightPlaceWords({ straight, at }: StraightPlace): string {
	return `the ${at ?? 'start'} of straight ${straight}`;
}

/** Between what of two straights a width is read. */
export const WIDTHS: Readonly<Record<WidthSurface, string>> = {
	outside: 'over the outsides',
	inside: 'between the insides',
	center: 'center to center',
};

/** Along which way a size over all is read: of a job begun at its far end, the drawing's first bend is the last one. */
const AXES: Readonly<Record<Axis, Record<'start' | 'end', string>>> = {
	x: { start: 'along straight 1', end: 'along the last straight' },
	y: {
		start: 'square to straight 1, in the plane of bend 1',
		end: 'square to the last straight, in the plane of the last bend',
	},
	z: { start: 'square to the plane of bend 1', end: 'square to the plane of the last bend' },
};

/** What a check measures, in a sentence without its end. */
export function checkWords(check: Check): string {
	switch (check.kind) {
		case 'drop': {
			const to = 'bend' in check.to ? `the outermost of bend ${check.to.bend}` : straightPlaceWords(check.to);
			const surface =
				check.surface === 'across' ? ', edge on the face away from the bend, over the tube' : ', center line';
			return `Drop from the line of straight ${check.from} to ${to}${surface}`;
		}
		case 'angle':
			return `Angle between straights ${check.between[0]} and ${check.between[1]}`;
		case 'span':
			return `Distance from ${cornerWords(check.from)} to ${cornerWords(check.to)}`;
		case 'out':
			return `How far ${straightPlaceWords(check.to)} lies out of the plane of straights ${check.plane[0]} and ${check.plane[1]}`;
		case 'width':
			return `Straight ${check.from} and ${straightPlaceWords(check.to)}, ${WIDTHS[check.surface]}`;
		case 'overall':
			return `Size over all, outside to outside, ${AXES[check.axis][check.at ?? 'start']}`;
		case 'ovality':
			return `Least over greatest outside diameter at the middle of bend ${check.bend}`;
	}
}

/** How much of an end that is not cut yet is in what a check should read, and what it then reads between the cut lines. */
export function includesWords(trim: number, expected: number, style: Ruled): string {
	const between = notNothing(expected - trim, style);
	return `The end is not cut yet: ${notNothing(trim, style)} of trim is in the expected reading. Between the cut lines: ${between}.`;
}

/** That an end to which a check reaches is as it stays; '' where none does. */
export function endsWords(check: Check): string {
	const reaches = check.kind === 'span' && ('end' in check.from || 'end' in check.to);
	return reaches ? 'No trim is on: measure to the end itself.' : '';
}
