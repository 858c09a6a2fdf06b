import { ceilTo } from '../maths/scalar.ts';
import type { ChangeDie } from '../session/protocol/facts/caution.ts';
import type { CautionFact, GeneralCaution } from '../session/protocol/facts/index.ts';
import { asWords } from './bent-as.ts';
import { foreignName } from './foreign.ts';
import { growthWords } from './growth.ts';
import { fromShown, inShown, type Ruled, shownUnits, type Wording } from './lengths.ts';
import { listed } from './listed.ts';
import { bandOf, exactAngle, fine, notNothing, tape } from './numbers.ts';

const GENERAL: Record<GeneralCaution, string> = {
	'pinch-points': 'Pinch points: keep hands clear of die, follower and clamp while the bender moves.',
	'hydraulic-pressure':
		'Hydraulic pressure: no body part near hoses or couplings. Release the pressure before you touch the tooling.',
	'tube-springing': 'Tube springing: the tube swings and springs back. Stand out of its way, and keep others out.',
	'cut-edges': 'Cut edges are sharp: deburr before handling.',
	'rule-book':
		'Roll structures follow their rule book and need inspection. This program certifies nothing; local codes and licensed practice come first.',
};

/** Before a bend is opened. */
export const GO_EASY =
	'Open a bend a little at a time. Some rule books do not allow a bend to be worked back: ask the inspector. Afterwards look for flats and cracks.';

/** What to mind. */
export function cautionWords(fact: CautionFact, style: Wording): string {
	switch (fact.code) {
		case 'go-easy-opening':
			return GO_EASY;
		case 'cut-length':
			return `Cut length: ${tape(fact.length, style)}, both trims in it.`;
		case 'bent-as':
			return asWords(fact);
		case 'growth-expected':
			return `${growthWords(fact.growth, fact.die)} Give the length of the piece as really cut.`;
		case 'change-die':
			return `${dieWords(fact, style)} ${OTHER_DIE}`;
		case 'narrow-band-costs': {
			const { pulls, risk, holds } = fact;
			const past = Math.max(1, Math.round(100 * risk));
			return `${bandOf(fact)} is a narrow band for this shop: count on up to ${Math.round(pulls)} pulls a bend, with about ${past} bends in 100 going over. In two pulls a bend it holds about ±${exactAngle(holds)}.`;
		}
		case 'opposite-face':
			return 'The mark goes on the opposite face of the tube from bend 1.';
		case 'telling-pays':
			return `Read the turn back once the tube is clamped, and tell it and the mark: the far end then comes out about ${notNothing(fact.nearer, style)} nearer.`;
		case 'clamp-room':
			return `The clamp needs ${fine(fact.needs, style)} of straight tube before the mark; there is ${notNothing(fact.is, style)}.`;
		case 'follow-room':
			return `${fine(fact.needs, style)} of straight tube must lie behind the bend; there will be ${notNothing(fact.is, style)}.`;
		case 'swing':
			return swingWords(fact, style);
		case 'seat-as-before':
			return "Set the tube at the same mark and in the same plane as before; keep it level. Don't move the dial.";
		default:
			return GENERAL[fact.code];
	}
}

/** Which die goes in, and which it takes the place of. */
export function dieWords({ die, clr, from }: ChangeDie, style: Ruled): string {
	const put = `die "${foreignName(die)}", center-line radius ${fine(clr, style)}`;
	return from === null ? `Put in ${put}.` : `Change the die: take out "${foreignName(from)}", put in ${put}.`;
}

/** What goes with a die. */
export const OTHER_DIE = 'Its own clamp and follower go with it. Pull the slack out before you read the dial.';

function swingWords({ reach, above, below, floor }: Extract<CautionFact, { code: 'swing' }>, style: Wording): string {
	const heights = [
		...(above === null ? [] : [`${clear(above, style)} above`]),
		...(below === null ? [] : [`${clear(below, style)} below`]),
	];
	const plane =
		heights.length === 0
			? ''
			: ` and ${listed(heights)} the die's plane with the die to the left of the tube, looking from the clamp; with the die to the right it is the other way up`;
	const hits = floor === null ? '' : ` The floor is ${fine(floor, style)} below that plane.`;
	return `Swing: the part beyond the clamp reaches ${clear(reach, style)} from the die's center${plane}.${hits}`;
}

/** What has to be kept clear, rounded up to whole inches or centimeters: nothing may stand nearer. */
function clear(length: number, style: Ruled): string {
	const step = shownUnits(style) === 'in' ? 1 : 10;
	return fine(fromShown(ceilTo(inShown(length, style), step), style), style);
}
