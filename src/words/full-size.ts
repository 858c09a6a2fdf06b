/** Words on what is printed at full size: profile, wrap strips, templates. */

import type { CopeTemplate } from '../tube/cope-template.ts';
import type { EndName, Job } from '../tube/job.ts';
import type { TubePlane } from '../tube/planes.ts';
import type { WrapStrip } from '../tube/wraps.ts';
import { formatAngle } from '../units/format.ts';
import { bendsFromTo } from './bend-name.ts';
import { isNothing, outWords } from './cope.ts';
import { type BendRadius, radiiWords } from './dies.ts';
import { foreignName } from './foreign.ts';
import type { Ruled } from './lengths.ts';
import { fine, tape } from './numbers.ts';
import { END_NAMES, roundWords } from './round.ts';

/** Which bends lie in the plane that is drawn. */
export function planeName({ bends: [first, last] }: Pick<TubePlane, 'bends'>, planes: number): string {
	const bends = bendsFromTo(first, last);
	return planes === 1 ? 'the tube' : `the plane of ${bends}`;
}

export const FULL_SIZE = {
	ruler:
		'Measure this ruler: 100 mm and 4 in exactly. If it is off, print again at 100 %, without fitting to the page.',
	joining: 'Cut each sheet along the dashed line. Lay it on the line of its neighbor, cross on cross, and tape it.',
	toFar: 'to the far end',
	glue: 'glue under',
	drawingsEnd: "the drawing's end",
	joint: 'joint line',
	longest: 'longest',
	deepest: 'deepest',
	one: "bend 1's line",
} as const;

/** Where a sheet's neighbor lies. */
export const joinsWords = (name: string) => `${name} joins here`;

export const sheetWords = (name: string, count: number) => `Sheet ${name} of ${count}`;

/** How many sheets a drawing takes; above `most` it is not printed. */
export function mapWords(sheets: number, most: number): string {
	if (sheets === 1) return 'It is on the sheet behind this one.';
	if (sheets <= most) return `It takes ${sheets} sheets. The map shows how they lie.`;
	return `At full size it takes ${sheets} sheets, more than the ${most} that are printed. Draw it on the bench by the table instead.`;
}

export const MAP_HEAD = 'To draw it on the bench: a tape, a base line, two arcs';

const PART_TITLES = { profile: 'Full-size profile', wraps: 'Wrap strips', copes: 'Cope templates' } as const;

/** At the top of each page. */
export const partTitle = (part: keyof typeof PART_TITLES, job: string) => `${PART_TITLES[part]}: ${foreignName(job)}`;

export const bendLabel = (bend: number, degrees: number) => `bend ${bend}: ${formatAngle(degrees, 2)}`;

export const markLabel = (bend: number, tapeText: string) => `mark ${bend}: ${tapeText}`;

export const cornerLabel = (bend: number) => `corner ${bend}`;

export const insideLabel = (bend: number) => `inside of bend ${bend}`;

export const tangentLabel = (bend: number, is: 'begins' | 'ends') => `bend ${bend} ${is}`;

export function straightLabel(straight: number, length: number, job: Ruled): string {
	return `straight ${straight}: ${tape(length, job)}`;
}

/** How to lay the profile, and what it shows. */
export function profileWords(bends: readonly BendRadius[], job: Ruled): string {
	const radius = radiiWords(bends, (each) => fine(each, job));
	return `The finished tube at full size: edges, center line, where each bend begins and ends, its corner and its mark. Center-line radius ${radius}. Lay the bent tube on it.`;
}

/** What a strip is for, and where it goes along and round the tube. */
export function stripWords({ bend, mark, around }: WrapStrip, job: Ruled): readonly [string, string] {
	const before = mark.fromLastBend === null ? '' : `, ${tape(mark.fromLastBend, job)} from the end of bend ${bend - 1}`;
	const inside = bend === 1 ? '' : `The inside of bend ${bend} lies ${roundWords(around.degrees)}.`;
	return [`Bend ${bend}: mark ${tape(mark.fromStart, job)} from the start end${before}.`, inside];
}

export const WRAPPING =
	"Draw a line along the tube first: bend 1's inside. Cut a strip out. Wrap it with the print outside and the arrow to the far end. Both ends meet on that line, and the thick line round the tube goes on the mark. Ends that miss each other by more than 1/32 in (1 mm): check the ruler below.";

/** Said where no bend is turned out of the first one's plane. */
export const ONE_PLANE =
	'All bends lie in one plane: a line along the tube, and one opposite to it, do as well as these strips.';

/** What a template is for, where it goes, and what it costs of tube. `edge`: from the tube's end, as cut, to the template's straight edge. */
export function templateWords(
	{ end, longer, longest, deepest }: CopeTemplate,
	{ job, edge }: { job: Job; edge: number },
): string[] {
	const { od, angle: between, offset } = job.ends![end]!.cope;
	const aside =
		offset === 0
			? ''
			: `, ${fine(Math.abs(offset), job)} to the ${offset > 0 ? 'right' : 'left'} of its center line, looking out of this end`;
	const past = outWords(longest[1], job);
	return [
		`Cope of the ${END_NAMES[end]}, for a tube of ${fine(od, job)} at ${formatAngle(between, 2)}${aside}.`,
		`Wrap it with the print outside, the arrow to the far end. Both sides meet on bend 1's line. Lay the straight edge ${tape(edge, job)} from the tube's end, as it was cut.`,
		`${longerTubeWords(longer, job)} Its longest point lies ${past}; it is cut back most ${outWords(deepest[1], job)}, ${fine(longest[1] - deepest[1], job)} deep.`,
	];
}

function longerTubeWords(longer: number, job: Ruled): string {
	return longer <= 0 || isNothing(longer, job)
		? 'It takes no more tube than the drawing.'
		: `The tube is cut ${fine(longer, job)} longer for it.`;
}

export const markNumberLabel = (bend: number) => String(bend);

/** What an end of the drawn plane is. `bend`: the plane's own at that end, of so many. */
export function planeEndLabel(end: EndName, bend: number, bends: number): string {
	if (end === 'start') return bend === 1 ? 'START' : `bend ${bend - 1} ends`;
	return bend === bends ? 'FAR END' : `bend ${bend + 1} begins`;
}

/** What an end of the drawn plane is coped for. */
export function copeLabel(job: Job, end: EndName): string {
	const { od, angle } = job.ends![end]!.cope;
	return `coped for ${fine(od, job)} at ${formatAngle(angle, 2)}`;
}

export const noCopes =
	'No end of this job is coped: both are cut square. Say what an end meets in the job, under "ends".';
