import type { Check, CornerName, StraightPlace } from '../tube/job.ts';
import type { Ruled } from './lengths.ts';
import { notNothing } from './numbers.ts';

function corner(name: CornerName): string {
	if ('bend' in name) return `the corner of bend ${name.bend}`;
	return name.end === 'start' ? 'the start end' : 'the far end';
}

function straightPlace({ straight, at }: StraightPlace): string {
	return `the ${at ?? 'start'} of straight ${straight}`;
}

/** What a check measures, in a sentence without its end. */
export function checkWords(check: Check): string {
	switch (check.kind) {
		case 'drop': {
			const to = 'bend' in check.to ? `the outermost of bend ${check.to.bend}` : straightPlace(check.to);
			const surface =
				check.surface === 'across' ? ', edge on the face away from the bend, over the tube' : ', center line';
			return `Drop from the line of straight ${check.from} to ${to}${surface}`;
		}
		case 'angle':
			return `Angle between straights ${check.between[0]} and ${check.between[1]}`;
		case 'span':
			return `Distance from ${corner(check.from)} to ${corner(check.to)}`;
		case 'out':
			return `How far ${straightPlace(check.to)} lies out of the plane of straights ${check.plane[0]} and ${check.plane[1]}`;
		case 'ovality':
			return `Least over greatest outside diameter at the middle of bend ${check.bend}`;
	}
}

/** How much of an end that is not cut yet is in what a check should read. */
export function includesWords(trim: number, style: Ruled): string {
	return `The end is not cut yet: ${notNothing(trim, style)} of trim is in the expected reading.`;
}
