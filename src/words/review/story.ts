import type { BendStory, CheckStory, Story } from '../../review/story.ts';
import { verdictOf } from '../../session/report/verdict.ts';
import type { Job } from '../../tube/job.ts';
import { capital } from '../../units/format.ts';
import { counted } from '../counted.ts';
import { checkValueWords } from '../doubt.ts';
import { foreign, foreignName } from '../foreign.ts';
import { about, angle, angleGiveOrTake, exactAngle, fine, readingSpread, shortOrOver } from '../numbers.ts';
import { STATUS_WORDS } from '../session-list.ts';
import { tubeSize } from '../tube-size.ts';
import { verdictWords } from '../verdict.ts';

/** What the pages of one kept session say of its tube, its bends and its checks. */

export const STORY = {
	text: 'all of it as one text',
	empty: 'Press + to read it page by page, or write the number of a choice and press Enter.',
} as const;

/** Tube, heat, bender and die. */
export function storyTube({ job, heat }: Story['view']): string {
	const { tube, tooling, units } = job;
	const of = heat === undefined ? '' : `, heat ${foreignName(heat)}`;
	return `${tubeSize(tube)} ${units} ${foreignName(tube.material.name)}${of}, bender ${foreignName(tooling.bender)}, die ${foreignName(tooling.die)}`;
}

/** What came of it: the short of it, then where the far end is. */
export function storyOutcome({ state, view, scrapped }: Story): { short: string; end: string | null } {
	if (scrapped !== null) return { short: `Scrapped: ${foreign(scrapped)}.`, end: null };
	const { job, status, asBuilt } = view;
	const verdict = status === 'done' ? verdictOf(state) : null;
	const off = `${fine(asBuilt.endOffset, job)} and ${angle(asBuilt.endAngle)}`;
	if (verdict === null)
		return {
			short:
				status === 'open' ? `${capital(STATUS_WORDS.open)}: it can be resumed.` : `${capital(STATUS_WORDS[status])}.`,
			end: `As far as made: far end off by ${off}.`,
		};
	const give = `${readingSpread(verdict.sd.endOffset, 'length', job)} and ${about(verdict.sd.endAngle)}`;
	const { shape: allowed, direction } = job.tolerance;
	return {
		short: verdictWords(verdict.fits, verdict.chance),
		end: `Far end off by ${off} (${fine(allowed, job)} and ${exactAngle(direction)} allowed), give or take ${give}.`,
	};
}

/** The corner that is farthest from its place, which may be what does not fit; null where the tube is not finished. */
export function cornerOffWords({ state, view: { job, status } }: Story): string | null {
	const verdict = status === 'done' ? verdictOf(state) : null;
	if (verdict === null) return null;
	const { bend, off } = verdict.shape;
	return `Bend ${bend} lies ${fine(off, job)} off its place (${fine(job.tolerance.shape, job)} allowed).`;
}

/** A bend among the pages to turn to; `brief`: where that has no room on one line. */
export function bendChoice({ bend, made, measured, steps }: BendStory): { label: string; brief?: string } {
	const pulls = steps.filter(({ step, void: gone }) => step === 'pull' && !gone).length;
	const came = `${counted(pulls, 'pull')}${measured || pulls === 0 ? '' : ', never measured'}`;
	const told = (words: string) => `bend ${bend}: ${words}; ${came}`;
	return made === null
		? { label: told('not finished') }
		: { label: told(`made ${angleGiveOrTake(made)}`), brief: told(`made ${angle(made.angle)}`) };
}

/** The further pages to turn to. */
export const CHAPTER = {
	corrections: (count: number): string => `corrections (${count})`,
	checks: ({ checks, notes }: Pick<Story, 'checks' | 'notes'>): string => {
		const read = checks.filter(({ reading }) => reading !== null).length;
		return `checks (${read} of ${checks.length} read) and notes (${notes.length})`;
	},
	tube: 'the tube as drawn over the tube as made',
	line: (lines: number): string => `step through it, line by line (${lines})`,
	plots: 'plots: springback, where stops landed, errors, pulls, scatter',
	taught: 'what it taught, and what to do next time',
} as const;

export const BEND = {
	title: (bend: number, bends: number): string => `Bend ${bend} of ${bends}`,
	corrections: 'Corrections',
	notMeasured: 'The angle finder was never put on it.',
	made: ({ made, target }: Pick<BendStory, 'made' | 'target'>): string =>
		made === null ? 'Not finished.' : `Made ${angleGiveOrTake(made)}${besideWanted(made.angle - target)}`,
	wanted: ({ target, low, high, design }: BendStory): string => {
		const drawn = angle(design) === angle(target) ? '' : `; drawing ${angle(design)}`;
		return `Wanted ${angle(target)}, from ${angle(low)} to ${angle(high)}${drawn}.`;
	},
} as const;

function besideWanted(miss: number): string {
	return angle(Math.abs(miss)) === angle(0) ? ': as wanted.' : `: ${shortOrOver(miss)}.`;
}

export const STORY_CHECKS = {
	title: 'Checks and notes',
	none: 'The job has no checks.',
	notes: 'Notes',
	warned: 'Warned of at the start',
	check: ({ name, kind, design, tolerance, reading, inside, skipped }: CheckStory, job: Job): string => {
		const told = (value: number) => checkValueWords(value, kind, job);
		const unread = skipped ? 'skipped' : 'not read';
		const came = reading === null ? unread : `read ${told(reading)}, ${inside ? 'inside' : 'OUTSIDE'}`;
		return `${foreignName(name)}: ${came}; drawing ${told(design)} ±${told(tolerance)}`;
	},
	setAside: '  (set aside)',
} as const;
