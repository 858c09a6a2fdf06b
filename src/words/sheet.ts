/** What stands on the shop sheet. */
import type { Known } from '../session/protocol/facts/known.ts';
import { diesAtWork, toolingOfDie } from '../tube/dies.ts';
import type { Job } from '../tube/job.ts';
import type { LayoutBend } from '../tube/layout.ts';
import { formatAngle } from '../units/format.ts';
import { counted } from './counted.ts';
import { dieListWords } from './dies.ts';
import { TOOL } from './doubt.ts';
import { foreignName } from './foreign.ts';
import { knownWords } from './known.ts';
import { division, inShown, type Ruled, shownUnits } from './lengths.ts';
import { fine, tape } from './numbers.ts';
import { hookBurnt } from './tape-words.ts';
import { tubeSize } from './tube-size.ts';

export const SHEET = {
	title: 'shop sheet',
	mark: '1. Cut and mark the straight tube',
	bend: '2. Bend, one row at a time: mark to the die, turn the tube, pull',
	check: '3. Check',
	shape: 'The finished tube',
	look: 'Something reads wrong? Look here first',
	cautions: 'Cautions',
	columns: {
		bend: 'bend',
		mark: 'mark',
		far: 'from the far end',
		side: 'side of the tube',
		turn: 'turn the tube',
		stop: 'first stop',
		leaves: 'leaves, give or take',
		angle: 'finished angle',
		held: 'held',
		released: 'after release',
		measured: 'measured',
		check: 'check',
		after: 'after bend',
		should: 'should read',
		within: 'within',
		read: 'read',
	},
	flat: 'The tube lies flat: one view shows it all.',
} as const;

/** How the rows of the table are used. */
export function rowsWords(bends: readonly LayoutBend[], { tolerance }: Pick<Job, 'tolerance'>): string {
	const isTurned = bends.some(({ tubeTurn }) => tubeTurn.way !== 'none');
	const sides = 'Draw one straight line along the tube, the side of bend 1: other sides are measured round from it.';
	const ways = 'Side and turn are seen at the clamp, looking to the far end.';
	const [under, over] = [formatAngle(tolerance.under, 2), formatAngle(tolerance.over, 2)];
	return [
		'Measure the mark from the start end.',
		...(isTurned ? [sides, ways] : []),
		`Angles are by the angle finder, not by the dial; one may end ${under} under and ${over} over.`,
	].join(' ');
}

/**
 * What follows a pull that left the bend short. By all that is missing 20 bends in 100 came out over, by this much less 11, with a fifth more pulls
 * (practice by the sheet alone, 100 tubes each of two samples, seeds 5,941,000 on).
 */
export function shortWords({ tolerance: { under, over } }: Pick<Job, 'tolerance'>): string {
	const less = formatAngle(Math.min(under, over), 2);
	return `Short? Stop further by what is missing, less ${less}. Too far can hardly be mended.`;
}

/** At the foot of each page: when it was printed, and from what file. */
export const printedWords = (when: string, path: string): string => `Printed ${when} from ${path}`;

/** What is filled in with a pen. */
export const PEN_FIELDS = ['Piece', 'Heat', 'Date', 'Bent by'] as const;

/** Where the stops come from, and how well that is known. */
export function stopsKnown(known: Known): string {
	return `The first stops are known ${knownWords(known)}, and short on purpose. pullbook bend tells better ones after each pull.`;
}

/** Which die to put in for a bend, where a tube is bent on several. */
export const onDie = (die: string): string => `die "${foreignName(die)}"`;

/** What a column has, with the unit that its numbers are in. */
export const inUnit = (head: string, job: Ruled): string => `${head}, ${shownUnits(job)}`;

/** Where a mark goes round the tube, in as few words as a column has. */
export function sideWords({ face, around }: LayoutBend, job: Ruled): string {
	if (face !== 'other') return face === 'same' ? 'as bend 1' : 'opposite';
	const way = around.length > 0 ? 'clockwise' : 'counterclockwise';
	return `${fine(Math.abs(around.length), job)} ${way}`;
}

/** What the sheet is of, each with its name. */
export function sheetHead(job: Job): (readonly [name: string, value: string])[] {
	const { tube, tooling, quantity, units } = job;
	const dies = dieListWords(job);
	const radii = diesAtWork(job)
		.map((die) => `"${foreignName(die)}" ${tape(toolingOfDie(job, die).clr, { units, tooling })}`)
		.join(', ');
	return [
		['Tube', `${tubeSize(tube)}, ${foreignName(tube.material.name)}`],
		['Bender, die', `${foreignName(tooling.bender)}, ${foreignName(tooling.die)}`],
		...(dies === ''
			? [['Radius of the die', tape(tooling.clr, { units, tooling })] as const]
			: [['Dies', dies] as const, ['Their radius', radii] as const]),
		...(tube.heat === undefined ? [] : [['Heat', foreignName(tube.heat)] as const]),
		['Wanted', counted(quantity, 'tube')],
	];
}

/** The tube to cut, and what of it is trim. */
export function tapeCutWords(cut: number, job: Job): string {
	const { start, end } = job.trim;
	const trims =
		start === 0 && end === 0
			? 'No trim.'
			: `Gray is trim: ${fine(start, job)} at the start end, ${fine(end, job)} at the far end. Cut it off after the last bend.`;
	return `Cut the tube to ${tape(cut, job)}. ${trims} The start end goes through the clamp first.`;
}

/** What to look at before anything is bent again, the likeliest first. */
export function lookFirst(job: Job, bends: readonly LayoutBend[]): string[] {
	const { hold, read } = hookBurnt(inShown(bends[0]!.mark.fromStart, job), division(job), shownUnits(job));
	const turned = bends.some(({ tubeTurn }) => tubeTurn.way !== 'none');
	const tools = [...new Set(job.checks.map(({ kind }) => TOOL[kind]))];
	return [
		`The mark: measured from the start end, with the hook on. Starting the tape at ${hold}, bend 1 reads ${read}.`,
		...(turned
			? ['The turn: seen at the clamp, looking to the far end. From the other side it is the other way.']
			: []),
		'The dial: push the slack out first. Snug, it reads 0.',
		'The angle finder: measure the bend again on its two straights, clear of the weld seam.',
		...(tools.length === 0 ? [] : [`For the checks (${tools.join(', ')}): see that it lies where the check says.`]),
	];
}

/** The ends of the tape's strip. */
export const SHEET_ENDS = ['START', 'FAR END'] as const;

/** At the foot of a page that has others beside it. */
export const pageWords = (number: number, of: number): string => `page ${number} of ${of}`;
