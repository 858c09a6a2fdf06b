import type { ShapeRight } from '../../job/facts/index.ts';
import { trimmed } from '../../units/format.ts';
import { listed } from '../listed.ts';
import { leastFigure } from './figure.ts';

export function shapeRightWords(right: ShapeRight): string {
	switch (right.code) {
		case 'shape':
			return 'an object { … } with "bends" and "last", or with "points"';
		case 'one-shape':
			return 'one of the two: "bends" with "last", or "points" alone';
		case 'bends':
			return `a list [ … ] of bends, at least one and at most ${right.most}`;
		case 'points':
			return `a list [ … ] of points, at least ${right.least}: both ends and a corner; at most ${right.most}`;
		case 'point':
			return `[x, y] or [x, y, z] in ${right.units}`;
		case 'room': {
			const { least, finished, bends } = right;
			return `${leastFigure(least)} or more: at a finished radius of ${listed(finished.map((radius) => trimmed(radius, 3)))} ${needing(bends)} that room between the drawing's corners`;
		}
		case 'three-points':
			return 'at least 3 points: both ends and a corner';
		case 'another-point':
			return 'a point away from the one before it, for these two are the same';
		case 'out-of-line':
			return 'a point out of the line of its neighbors, for in line there is no bend: leave it out';
		case 'aside':
			return 'a corner that does not turn straight back: the point after it must lie aside';
		case 'further':
			return `a point ${leastFigure(right.by)} or more further from the one before it: ${needing(right.bends)} that room`;
	}
}

function needing(bends: readonly number[]): string {
	return `${bends.length === 1 ? 'bend' : 'bends'} ${listed(bends)} ${bends.length === 1 ? 'needs' : 'need'}`;
}
