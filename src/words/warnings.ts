import type { TubePart } from '../tube/self-contact.ts';
import type { Warning } from '../tube/warnings.ts';
import { foreignName } from './foreign.ts';
import { growthPercent } from './growth.ts';
import type { Ruled } from './lengths.ts';
import { angle, exactAngle, notNothing as length } from './numbers.ts';

export const CAUTIONS = 'Cautions';
export const NO_WARNINGS = 'No warnings.';

/** What stands in the way of bending a job as drawn, and what would help. */
export function warningWords(warning: Warning, style: Ruled): string {
	const of = (value: number) => length(value, style);
	switch (warning.code) {
		case 'stock-short': {
			const { stock, cut, trim } = warning;
			const less = trim > 0 ? `, or leave less trim (now ${of(trim)} in all)` : '';
			return `The piece in hand is ${of(stock)}, but the tube needs ${of(cut)}: ${of(cut - stock)} short. Take a longer piece${less}.`;
		}
		case 'no-room': {
			const { bends, growth } = warning;
			const [where, from] =
				bends.length === 2
					? [`Bends ${bends[0]} and ${bends[1]}`, 'between their corners']
					: [`Bend ${bends[0]}`, "between its corner and the tube's end"];
			return `${where}: the drawing leaves no room ${from} for a radius ${growthPercent(growth)} than the die's, as it should come out. The marks are for the die's own radius. Bend a test piece and give its growth, or take a smaller die.`;
		}
		case 'tight-radius':
			return `${warning.die === undefined ? "The die's" : `Die "${foreignName(warning.die)}": its`} center-line radius ${of(warning.clr)} is under ${warning.diameters} outside diameters (${of(warning.least)}): the tube may flatten or wrinkle, and many rule books refuse it. Use a larger die.`;
		case 'short-clamp': {
			const { bend, needs, is } = warning;
			const [from, help] =
				bend === 1
					? ['the raw start end', `more trim at the start end (${of(needs - is)} more)`]
					: [
							`bend ${bend - 1}`,
							`${of(needs - is)} more straight between bends ${bend - 1} and ${bend}, or a shorter clamp`,
						];
			return `Bend ${bend}: the clamp needs ${of(needs)} of straight tube before the mark, but from ${from} to the mark there is ${of(is)}. What would help: ${help}.`;
		}
		case 'dial-limit':
			return `Bend ${warning.bend}: for ${exactAngle(warning.angle)} the dial would have to go to about ${angle(warning.stop)} under load, but the bender ends at ${angle(warning.maxAngle)}. Use a bender that reaches further, or split the bend in two.`;
		case 'short-follow': {
			const { bend, needs, is } = warning;
			return `Bend ${bend}: ${of(needs)} of straight tube must lie behind the bend when it is pulled, but up to the raw far end there is ${of(is)}. What would help: ${of(needs - is)} more trim at the far end.`;
		}
		case 'self-contact': {
			const [first, second] = warning.parts.map(partName);
			return `The finished tube runs into itself: the center lines of ${first} and ${second} come within ${of(warning.distance)}, and the tube is ${of(warning.od)} thick. Check the rotations between them, or lead one past the other.`;
		}
		case 'floor-contact': {
			const { bend, depth, floor, die } = warning;
			const where = die === null ? '' : `with the die to the ${die} of the tube, `;
			return `Bend ${bend}: ${where}the made part hangs ${of(depth)} below the die's plane while it swings, and the floor is ${of(floor)} below it (left and right as seen at the clamp, looking toward the far end). Stand the bender higher, or start from the other end if the layout finds that end free.`;
		}
		case 'no-crown': {
			const { name, from, bend } = warning;
			return `Check "${foreignName(name)}": the tube nowhere runs parallel to straight ${from} in bend ${bend}, so there is no crown to measure to. Use "straight": ${bend + 1}, the end of that bend, or "straight": ${bend}, its beginning, in place of "bend".`;
		}
	}
}

/** As documents have it: the place, the code and the sentence. */
export const withText = (warning: Warning, style: Ruled) => ({
	at: warning.at,
	code: warning.code,
	text: warningWords(warning, style),
});

const partName = (part: TubePart): string => ('bend' in part ? `bend ${part.bend}` : `straight ${part.straight}`);
