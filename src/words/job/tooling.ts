import type { ToolingRight } from '../../job/facts/index.ts';
import { asJson } from '../../tube/as-json.ts';
import { leastFigure, mostFigure } from './figure.ts';

export function toolingRightWords(right: ToolingRight): string {
	switch (right.code) {
		case 'radius-of-die': {
			const { kept } = right;
			const or = kept ? `, or a bender "${kept.bender}" and die "${kept.die}" set up in the program with one` : '';
			return `the center-line radius of the die, a length above 0${or}`;
		}
		case 'radius-at-least':
			return `a radius of at least half the outside diameter, ${leastFigure(right.least)}`;
		case 'radius-at-most':
			return `a radius of at most ${mostFigure(right.most)}: at a larger one this tube of this material springs back by more than half`;
		case 'dies':
			return `an object { … } of at most ${right.most} dies, each under its name`;
		case 'other-die-name':
			return "another name than the job's own die has";
		case 'die-of-job':
			return right.dies === null
				? 'a die of tooling.dies, by its name'
				: `a die of this job, one of ${right.dies.map(asJson).join(', ')}`;
	}
}
