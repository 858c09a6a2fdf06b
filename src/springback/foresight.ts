/** What a band will cost, told before the first pull: a narrow one costs pulls whatever the method. */
import { firstWhole } from '../maths/halving.ts';
import { roundedTo } from '../maths/scalar.ts';
import { type Filter, pullSpread, reach } from './filter.ts';
import type { Band } from './prospect.ts';
import { handsOf, predictStop } from './stop.ts';
import { planned } from './worth.ts';

export interface Foresight {
	/** Pulls of the bend in hand on average, and the part of such bends that pass the upper tolerance. */
	pulls: number;
	risk: number;
	/** Half the width of the narrowest even band that these hands hold at the risk allowed in two pulls a bend, machine and tube known; degrees. */
	holds: number;
}

const TWO_PULLS = 2;
/** Bands are told to a twentieth of a degree, up to a width that any hands hold. */
const TOLD_STEP = 0.05;
const WIDEST_BAND = 5;

/** Before a bend's first pull. */
export function foresee(f: Filter, band: Band): Foresight {
	const hands = handsOf(f);
	const { variance } = reach(f, predictStop(f, band.target));
	const holds = (half: number) => {
		const { pulls, risk } = planned({ ...band, under: half, over: half }, hands, hands.settled);
		return pulls <= TWO_PULLS && risk <= band.risk;
	};
	const grains = firstWhole((n) => holds(n * TOLD_STEP), 0, WIDEST_BAND / TOLD_STEP);
	return { ...planned(band, hands, pullSpread(f, variance)), holds: roundedTo(grains * TOLD_STEP, 2) };
}
