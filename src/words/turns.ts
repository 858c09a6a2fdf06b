import type { TubeTurn } from '../tube/turns.ts';
import { formatAngle } from '../units/format.ts';

/** How to turn the tube before a bend. */
export function turnWords({ degrees, way }: TubeTurn): string {
	switch (way) {
		case 'none':
			return 'as it lies';
		case 'either':
			return `${formatAngle(degrees, 2)} either way`;
		default:
			return `${formatAngle(degrees, 2)} ${way}`;
	}
}
