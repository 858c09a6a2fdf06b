import type { Action } from '../../session/protocol.ts';
import type { Job } from '../../tube/job.ts';
import { trimmed } from '../../units/format.ts';
import { parseAngle, parseLength, parseNumber } from '../../units/parse.ts';
import { UnitsError } from '../../units/units-error.ts';
import { EMPTY, type Line, span } from '../line.ts';
import type { Prompt } from '../prompt.ts';
import type { Step } from '../session-state.ts';
import { dial, type Measure } from '../words.ts';

/** The room that a page's body has, and what fills a cell of a block digit. */
export interface Room {
	columns: number;
	rows: number;
	ink: string;
}

/** Lines that belong together. Where room is scarce the lower ranks come first; rank 0 stays. */
export interface Section {
	rank: number;
	lines: readonly Line[];
}

/** One page of a session. */
export interface PageView {
	title: string;
	prompt: Prompt<Step>;
	body(room: Room): Section[];
}

/** The sections' lines with a blank line between sections, without what does not fit. */
export function fitted(sections: readonly Section[], rows: number): Line[] {
	const filled = sections.filter(({ lines }) => lines.length > 0);
	const byRank = filled.toSorted((a, b) => a.rank - b.rank);
	const chosen = new Set<Section>();
	for (const section of byRank) {
		const tried = filled.filter((each) => chosen.has(each) || each === section);
		if (section.rank === 0 || spaced(tried).length <= rows) chosen.add(section);
	}
	const kept = filled.filter((each) => chosen.has(each));
	const airy = spaced(kept);
	const lines = airy.length <= rows ? airy : kept.flatMap((section) => section.lines);
	return lines.slice(0, rows);
}

function spaced(sections: readonly Section[]): Line[] {
	return sections.flatMap(({ lines }, at) => (at === 0 ? lines : [EMPTY, ...lines]));
}

/** The keys that every ask has besides its own. */
export const SLASH = { label: 'take back', step: { step: 'page', page: { page: 'undo' } } } as const;
export const STAR = { label: 'more', step: { step: 'page', page: { page: 'more' } } } as const;
export const BACK = { label: 'back', step: { step: 'page', page: { page: 'ask' } } } as const;

/** A field for one number of that measure, in the job's units. */
export function numberField(
	measure: Measure,
	job: Job,
	step: (value: number) => Step,
): { read: (text: string) => Step; understood: (text: string) => string } {
	const parse = parser(measure, job);
	return { read: (text) => step(parse(text)), understood: (text) => written(parse(text), measure, job) };
}

function parser(measure: Measure, job: Job): (text: string) => number {
	if (measure === 'angle') return parseAngle;
	if (measure === 'length') return (text) => parseLength(text, job.units);
	return parseNumber;
}

/** A number as it was understood. */
export function written(value: number, measure: Measure, job: Job): string {
	if (measure === 'angle') return dial(value);
	if (measure === 'ratio') return trimmed(value, 4);
	return `${trimmed(value, 4)} ${job.units}`;
}

/** The step that answers with one action. */
export function answer(action: Action): Step {
	return { step: 'answer', answer: { action } };
}

/** Refuses what only a whole number from 1 to `last` can be. */
export function bendNumber(text: string, last: number): number {
	if (/^\d+$/.test(text) && Number(text) >= 1 && Number(text) <= last) return Number(text);
	throw new UnitsError(text, `write a bend's number, from 1 to ${last}`);
}

/** In plain figures: what a reading is expected to be must not be easier to see than what it is. */
export function expected(value: string): Line {
	return [span('expected  '), span(value, 'strong')];
}
