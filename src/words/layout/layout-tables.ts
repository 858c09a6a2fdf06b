import type { Job } from '../../tube/job.ts';
import type { LayoutBend, LayoutCheck, LayoutDocument } from '../../tube/layout.ts';
import { formatAngle, trimmed } from '../../units/format.ts';
import { foreignName } from '../foreign.ts';
import { turnWords } from '../turns.ts';
import { bare } from './heading.ts';

/** A table under a heading, and sentences below it. */
export interface TableWords {
	heading: readonly string[];
	/** The first is the heads of the columns. */
	rows: readonly (readonly string[])[];
	/** Columns that hold words: they begin at the left. */
	words: readonly number[];
	notes: readonly string[];
}

const ROUND =
	'Round the tube: along the outside from the line of bend 1, clockwise as seen looking from the start end to the far end.';

function roundTheTube({ face, around }: LayoutBend, job: Job): string {
	if (face === 'same') return 'same side as bend 1';
	if (face === 'opposite') return 'opposite side';
	const way = around.length > 0 ? 'clockwise' : 'counterclockwise';
	return `${bare(Math.abs(around.length), job)} ${way} (${formatAngle(Math.abs(around.degrees))})`;
}

export function markingTable(job: Job, { bends }: LayoutDocument): TableWords {
	const rows = bends.map((bend) => [
		`${bend.bend}`,
		bend.mark.tape,
		bare(bend.mark.fromStart, job),
		bare(bend.mark.fromFarEnd, job),
		bend.mark.fromLastBend === null ? '-' : bare(bend.mark.fromLastBend, job),
		roundTheTube(bend, job),
	]);
	return {
		heading: [
			'1. Mark the straight tube: tape and exact length from the start end, or from the',
			'   far end, or from the end of the last bend',
		],
		rows: [['bend', 'tape', 'exactly', 'far end', 'last bend', 'round the tube'], ...rows],
		words: [5],
		notes: bends.some((bend) => bend.face === 'other') ? [ROUND] : [],
	};
}

const STOPS =
	'The way to turn is seen standing at the clamp, looking toward the far end. Stop past the finished angle by what the tube ' +
	'springs back: pullbook bend says where.';

const severalDies = (bends: readonly LayoutBend[]): boolean => bends.some(({ die }) => die !== undefined);

export function bendingTable({ bends }: LayoutDocument): TableWords {
	const several = severalDies(bends);
	const rows = bends.map((bend) => [
		`${bend.bend}`,
		bend.mark.tape,
		...(bend.die === undefined ? [] : [foreignName(bend.die)]),
		turnWords(bend.tubeTurn),
		formatAngle(bend.angle, 2),
	]);
	return {
		heading: [`2. Bend, one row at a time: ${several ? 'its die in, ' : ''}mark to the die, turn the tube, bend`],
		rows: [['bend', 'mark', ...(several ? ['die'] : []), 'turn the tube', 'finished angle'], ...rows],
		words: several ? [2, 3] : [2],
		notes: [STOPS],
	};
}

export function shapeTable(job: Job, { bends }: LayoutDocument): TableWords {
	const several = severalDies(bends);
	const rows = bends.map(({ bend, rotation, ...part }) => [
		`${bend}`,
		formatAngle(rotation, 2),
		...[part.straight, part.arc, part.setback, part.external].map((length) => bare(length, job)),
		...(several ? [bare(part.radius, job)] : []),
	]);
	const heads = ['bend', 'rotation', 'straight before', 'arc', 'setback', 'external', ...(several ? ['radius'] : [])];
	return { heading: ['The shape'], rows: [heads, ...rows], words: [], notes: [] };
}

export function checksTable(job: Job, { checks }: LayoutDocument): TableWords {
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
	const heads = ['after bend', 'check', 'kind', 'should be', 'within'];
	return { heading: ['Checks'], rows: [heads, ...rows], words: [1, 2], notes: [] };
}

const SWING =
	"Reaches: from the die's center to the outside of the part beyond the clamp, which swings with the die. Above and below: from " +
	"the die's plane, with the die to the left of the tube as seen from the clamp. With the die to the right, swap the two.";

export function swingTable(job: Job, { bends }: LayoutDocument): TableWords {
	const rows = bends.map(({ bend, swing }) => [
		`${bend}`,
		...[swing.reach, swing.above, swing.below].map((length) => bare(length, job)),
	]);
	return {
		heading: ['Room for the swing'],
		rows: [['bend', 'reaches', 'above', 'below'], ...rows],
		words: [],
		notes: [SWING],
	};
}
