import type { SetAsk } from '../../session/protocol/asks.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import type { EndName } from '../../tube/job.ts';
import { markFrom } from '../../tube/marks.ts';
import type { TurnWay } from '../../tube/turns.ts';
import { division, fromShown, inShown, type Ruled, shownUnits } from '../lengths.ts';
import { angle, fine, tape } from '../numbers.ts';
import { hookBurnt, tapePhrase } from '../tape-words.ts';

/** How a bend's mark and turn are said; sentences without what the large numbers say already. */

/** Round the tube and round the machine nobody knows front from back: from where it is looked at. */
export const SEEN = 'seen from the clamp side toward the far end';

const END_WORDS: Record<EndName, string> = { start: 'start', far: 'far' };

/** The reading and what is left over, and the reading with the tape's hook left out; `brief`: without the end, which stands under the mark. */
export function tapeWords(set: SetAsk, end: EndName, job: Ruled, brief = false): string {
	const length = inShown(markFrom(set.mark, end), job);
	const units = shownUnits(job);
	const { hold, read } = hookBurnt(length, division(job), units);
	const said = tapePhrase(length, division(job), units);
	const burnt = units === 'in' ? 'an inch' : `${hold} ${units}`;
	if (brief) return `${said}; burn ${burnt}: ${read}.`;
	return `${said} from the ${END_WORDS[end]} end; burn ${burnt}: hold ${hold} on the end, read ${read}.`;
}

/** The same mark from the other end, and what both as they are shown come to; by the rounding that may not be the piece's length. */
export function otherEndWords(set: SetAsk, end: EndName, job: Ruled): string {
	const other = end === 'far' ? 'start' : 'far';
	const { fromStart, fromFarEnd } = set.mark;
	const step = division(job);
	const steps = [fromStart, fromFarEnd].map((length) => Math.round(inShown(length, job) / step));
	const both = tape(fromShown((steps[0]! + steps[1]!) * step, job), job);
	const piece = tape(fromStart + fromFarEnd, job);
	const check = `Check: ${tape(markFrom(set.mark, other), job)} from the ${END_WORDS[other]} end`;
	return both === piece ? `${check}, ${both} together.` : `${check}, ${both} together (the piece: ${piece}).`;
}

/** How far the mark lies from the design's, which is on the tube already. */
export function movedWords({ mark }: SetAsk, job: Ruled): string {
	// Less than an eighth of the tape's division cannot be set.
	if (Math.abs(mark.moved) < job.tooling.tape / 8) return "It is the drawing's mark itself.";
	const toward = mark.moved > 0 ? 'far' : 'start';
	return `Moved ${fine(Math.abs(mark.moved), job)} from the drawing's mark, toward the ${toward} end.`;
}

/** Where the mark goes round the tube, and how the tube is turned: two ways that differ, since the machine's plane stands still. */
export function markLineWords({ around, face, tubeTurn, bend }: SetAsk, job: Ruled): string {
	const turn = bend === 1 ? '' : turnTheTube(tubeTurn);
	const turned = tubeTurn.way === 'clockwise' || tubeTurn.way === 'counterclockwise';
	const seen = turned ? `, ${SEEN}` : '';
	if (face === 'same') return `Mark on the line along the tube${turn === '' ? '' : `; ${turn}${seen}`}.`;
	const length = fine(Math.abs(around.length), job);
	if (face === 'opposite') return `Mark both faces, ${length} round to the opposite; ${turn}${seen}.`;
	const way = around.degrees > 0 ? 'clockwise' : 'counterclockwise';
	return `Mark ${length} round, ${way}; ${turn}, ${SEEN}.`;
}

function turnTheTube({ degrees, way }: SetAsk['tubeTurn']): string {
	if (way === 'none') return "don't turn the tube";
	return way === 'either' ? 'flip the tube, either way' : `turn the tube ${angle(degrees)} ${way}`;
}

/** Which way a bend goes, against the one before it. */
export function goesWords({ bend, rotation }: Pick<SetAsk, 'bend' | 'rotation'>): string {
	if (bend === 1) return '';
	const turned = normalizeRotation(rotation);
	const before = `bend ${bend - 1}`;
	if (Math.abs(turned) < 0.05) return `It bends the same way as ${before}.`;
	if (Math.abs(turned) > 179.95) return `It bends the opposite way to ${before}.`;
	const way = turned > 0 ? 'clockwise' : 'counterclockwise';
	return `It bends ${angle(Math.abs(turned))} ${way} of the way ${before} went, ${SEEN}.`;
}

/** The turn in as few letters as a table has room for. */
const SHORT: Record<TurnWay, string> = { clockwise: ' cw', counterclockwise: ' ccw', either: '', none: '' };

export function shortTurn({ degrees, way }: SetAsk['tubeTurn']): string {
	return way === 'none' ? 'none' : `${angle(degrees)}${SHORT[way]}`;
}
