import type { CheckFound, CheckRight, StraightsRight, Surface } from '../../job/facts/index.ts';
import { formatAngle } from '../../units/format.ts';
import { listed } from '../listed.ts';

export function kindsWords(kinds: CheckFound['kinds']): string {
	return kinds.length === 0 ? 'nothing to measure' : listed(kinds);
}

const ONE_OF: Readonly<Record<Surface, string>> = {
	'drop-surface': '"across", for a reading to the outside of the tube',
	'width-surface': '"outside", "inside" or "center"',
	axis: '"x", "y" or "z", an axis of bend 1',
	end: '"start" or "far", the finished end',
};

export function checkRightWords(right: CheckRight): string {
	switch (right.code) {
		case 'checks':
			return `a list [ … ] of at most ${right.most} checks`;
		case 'a-check':
			return `an object { … } with "name" and one of ${right.kinds.join(', ')}`;
		case 'one-kind':
			return `exactly one of ${right.kinds.join(', ')}`;
		case 'other-check-name':
			return `a name of its own: checks[${right.index}] is called that`;
		case 'one-of':
			return ONE_OF[right.of];
		case 'one-key':
			return listed(
				right.keys.map((key) => `{ "${key}": ${key === 'end' ? '"start" or "far"' : 'its number'} }`),
				'or',
			);
		case 'other-straight':
			return `another straight than ${right.than}, from which it is measured`;
		case 'other-place':
			return 'another place than "from"';
		case 'two-straights':
			return 'two different straights, [j, k]';
		case 'not-parallel':
			return 'two straights that are not parallel: these two span no plane';
		case 'parallel':
			return `two straights that run parallel within ${right.within}°: these are ${formatAngle(right.apart, 1)} apart`;
	}
}

/** The same of two straights that were chosen at a question, where a list of numbers says nothing. */
export function wrongStraightsWords(right: StraightsRight): string {
	switch (right.code) {
		case 'two-straights':
			return 'That is the same straight twice: choose another one.';
		case 'not-parallel':
			return 'These two straights run parallel and span no plane: choose another one.';
		case 'parallel': {
			const apart = formatAngle(right.apart, 1);
			return `These two straights are ${apart} apart: choose one that runs parallel within ${right.within}°.`;
		}
	}
}
