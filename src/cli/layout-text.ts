import { table } from '../terminal/table.ts';
import { copedEnds } from '../tube/cope.ts';
import { diesOf, toolingOfDie } from '../tube/dies.ts';
import type { Job } from '../tube/job.ts';
import type { LayoutBend, LayoutCheck, LayoutDocument } from '../tube/layout.ts';
import { formatAngle, trimmed } from '../units/format.ts';
import { formatTape } from '../units/tape.ts';
import { bentAsWords } from '../words/bent-as.ts';
import { copeDoubts, copeWords } from '../words/cope.ts';
import { foreignName } from '../words/foreign.ts';
import { turnWords } from '../words/turns.ts';
import { warningWords } from '../words/warnings.ts';
import { wrapped } from './page.ts';

const ROUND =
	'Round the tube: along the outside from the line of bend 1, clockwise as seen looking from the start end to the far end.';
const STOPS =
	'The way to turn is seen standing at the clamp, looking toward the far end. Stop past the finished angle by what the tube ' +
	'springs back: pullbook bend says where.';

/** Tables print lengths without their unit, which the heading names. */
const bare = (length: number, { units }: Job): string => trimmed(length, units === 'in' ? 3 : 1);

function heading(job: Job, { cutLength, developedLength, overall }: LayoutDocument, said: readonly string[]): string[] {
	const { tube, tooling, trim } = job;
	const coped = copedEnds(job);
	const as = bentAsWords(job);
	const unit = job.units === 'in' ? 'inches' : 'millimeters';
	const length = (value: number) => bare(value, job);
	return [
		...wrapped(`${foreignName(job.name)} (lengths in ${unit})`),
		...wrapped(
			`Tube ${trimmed(tube.od, 4)} x ${trimmed(tube.wall, 4)} ${foreignName(tube.material.name)}. Bender "${foreignName(tooling.bender)}", die ` +
				`"${foreignName(tooling.die)}", center-line radius ${length(tooling.clr)}.`,
		),
		...dieLines(job).flatMap((sentence) => wrapped(sentence)),
		...(as === null ? [] : wrapped(as)),
		...said.flatMap((sentence) => wrapped(sentence)),
		'',
		...wrapped(
			`Cut the tube to ${formatTape(cutLength, tooling.tape, job.units)} (${length(cutLength)}): ` +
				`${length(developedLength)} for the shape, trim of ${length(trim.start)} at the start end and ` +
				`${length(trim.end)} at the far end${coped.some(({ past }) => past > 0) ? ', what the copes need in it' : ''}.`,
		),
		...coped.flatMap((end) => [copeWords(end, job), ...copeDoubts(end, job)].flatMap((each) => wrapped(each))),
		'The start end is the one that goes through the clamp first.',
		...wrapped(
			`Finished size, outside to outside: ${length(overall.x)} along straight 1, ${length(overall.y)} toward the inside of bend 1, ` +
				`${length(overall.z)} square to both.`,
		),
	];
}

/** The other dies that bends are bent on, and when each goes in. */
function dieLines(job: Job): string[] {
	return diesOf(job)
		.slice(1)
		.map((die) => {
			const { clr } = toolingOfDie(job, die);
			return `Another die in this tube: "${foreignName(die)}", center-line radius ${bare(clr, job)}.`;
		});
}

/** A column of the dies, where there are several. */
const dieColumn = (bends: readonly LayoutBend[]) => ({
	head: bends.some(({ die }) => die !== undefined) ? ['die'] : [],
	of: ({ die }: LayoutBend) => (die === undefined ? [] : [foreignName(die)]),
});

function roundTheTube({ face, around }: LayoutBend, job: Job): string {
	if (face === 'same') return 'same side as bend 1';
	if (face === 'opposite') return 'opposite side';
	const way = around.length > 0 ? 'clockwise' : 'counterclockwise';
	return `${bare(Math.abs(around.length), job)} ${way} (${formatAngle(Math.abs(around.degrees))})`;
}

function marking(job: Job, { bends }: LayoutDocument): string[] {
	const rows = bends.map((bend) => [
		`${bend.bend}`,
		bend.mark.tape,
		bare(bend.mark.fromStart, job),
		bare(bend.mark.fromFarEnd, job),
		bend.mark.fromLastBend === null ? '-' : bare(bend.mark.fromLastBend, job),
		roundTheTube(bend, job),
	]);
	const heads = ['bend', 'tape', 'exactly', 'far end', 'last bend', 'round the tube'];
	return [
		'',
		'1. Mark the straight tube: tape and exact length from the start end, or from the',
		'   far end, or from the end of the last bend',
		...table([heads, ...rows], [5]),
		...(bends.some((bend) => bend.face === 'other') ? wrapped(ROUND, '  ') : []),
	];
}

function bending({ bends }: LayoutDocument): string[] {
	const die = dieColumn(bends);
	const rows = bends.map((bend) => [
		`${bend.bend}`,
		bend.mark.tape,
		...die.of(bend),
		turnWords(bend.tubeTurn),
		formatAngle(bend.angle, 2),
	]);
	const several = die.head.length > 0;
	return [
		'',
		`2. Bend, one row at a time: ${several ? 'its die in, ' : ''}mark to the die, turn the tube, bend`,
		...table([['bend', 'mark', ...die.head, 'turn the tube', 'finished angle'], ...rows], several ? [2, 3] : [2]),
		...wrapped(STOPS, '  '),
	];
}

function shapeRows(job: Job, { bends }: LayoutDocument): string[] {
	const several = bends.some(({ die }) => die !== undefined);
	const rows = bends.map(({ bend, rotation, ...part }) => [
		`${bend}`,
		formatAngle(rotation, 2),
		...[part.straight, part.arc, part.setback, part.external].map((length) => bare(length, job)),
		...(several ? [bare(part.radius, job)] : []),
	]);
	const radius = several ? ['radius'] : [];
	const heads = ['bend', 'rotation', 'straight before', 'arc', 'setback', 'external', ...radius];
	return ['', 'The shape', ...table([heads, ...rows], [])];
}

const SWING =
	"Reaches: from the die's center to the outside of the part beyond the clamp, which swings with the die. Above and below: from " +
	"the machine's plane, with the die to the left of the tube as seen from the clamp. With the die to the right, swap the two.";

function swingRows(job: Job, { bends }: LayoutDocument): string[] {
	const rows = bends.map(({ bend, swing }) => [
		`${bend}`,
		...[swing.reach, swing.above, swing.below].map((length) => bare(length, job)),
	]);
	return [
		'',
		'Room for the swing',
		...table([['bend', 'reaches', 'above', 'below'], ...rows], []),
		...wrapped(SWING, '  '),
	];
}

/** Which end of the drawing to begin at. */
function endRows({ ends, bends }: LayoutDocument): string[] {
	const both = ['start', 'far'] as const;
	const said = both.map((end) => {
		const { possible, left } = ends[end];
		return [`${end} end`, possible ? 'can be bent' : 'not as drawn', trimmed(left, 1)];
	});
	const reasons = both.flatMap((end) => {
		const found = [...new Set(ends[end].hindrances.map(({ code }) => HINDRANCES[code] ?? code))];
		return found.length === 0 ? [] : wrapped(`Begun at the ${end} end: ${found.join(', ')}.`, '  ');
	});
	const better = ends.better === null ? NO_BETTER : ends[ends.better].possible ? BETTER[ends.better] : NEITHER;
	return [
		'',
		'Which end to bend first (--from start or --from far)',
		...table([['begun at the', 'clamp, tube behind, floor', 'left over'], ...said], [0, 1]),
		...reasons,
		...wrapped(LEFT, '  '),
		...(bends.length === 1 ? [] : wrapped(better, '  ')),
	];
}

const HINDRANCES: Readonly<Record<string, string>> = {
	'short-clamp': 'the clamp finds too little straight',
	'short-follow': 'too little tube behind the last bend',
	'floor-contact': 'the swing meets the floor',
};
const LEFT =
	'Left over: say each bend comes out wrong by its tolerance. This much of it the bends after cannot take up, counted in tolerances of the finished tube. Less is better.';
const NO_BETTER = 'Both ends leave about the same to correct with.';
const NEITHER = 'Neither end can be bent as drawn; see the cautions.';
const BETTER = {
	start: 'Better begun at the start end of the drawing.',
	far: 'Better begun at the far end of the drawing: --from far.',
} as const;

function checkRows(job: Job, { checks }: LayoutDocument): string[] {
	if (checks.length === 0) return [];
	const value = (check: LayoutCheck, number: number) => {
		if (check.kind === 'angle') return formatAngle(number, 2);
		return check.kind === 'ovality' ? trimmed(number, 3) : bare(number, job);
	};
	const rows = checks.map((check) => [
		`${check.after}`,
		foreignName(check.name),
		check.kind,
		value(check, check.design),
		`±${value(check, check.tolerance)}`,
	]);
	return ['', 'Checks', ...table([['after bend', 'check', 'kind', 'should be', 'within'], ...rows], [1, 2])];
}

function cautions(job: Job, { warnings }: LayoutDocument): string[] {
	if (warnings.length === 0) return ['', 'No warnings.'];
	return ['', 'Cautions', ...warnings.flatMap((warning) => wrapped(warningWords(warning, job), '  - '))];
}

/**
 * The layout as a page for the bench, at most 80 columns wide save for long names: marking, then bending, then the rest.
 * `said`: sentences on what it rests on.
 */
export function layoutText(job: Job, document: LayoutDocument, said: readonly string[]): string {
	return [
		...heading(job, document, said),
		...marking(job, document),
		...bending(document),
		...shapeRows(job, document),
		...checkRows(job, document),
		...swingRows(job, document),
		...endRows(document),
		...cautions(job, document),
	].join('\n');
}
