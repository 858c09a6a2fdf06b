/** What stands on a session's record. */
import type { Answered } from '../session/log/answered.ts';
import type { Event } from '../session/log/events.ts';
import type { State } from '../session/log/state.ts';
import { finishList } from '../session/report/finish-list.ts';
import type { PullView } from '../session/report/set-ups.ts';
import { stages } from '../session/report/stages.ts';
import { tellsMostOf, verdictOf } from '../session/report/verdict.ts';
import { bendLimits, type SessionView } from '../session/report/views.ts';
import { formatAngle, trimmed } from '../units/format.ts';
import { answeredWords } from './answered.ts';
import { finishWords } from './finish.ts';
import { foreign, foreignName } from './foreign.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { about, angle, fine, notNothing, readingSpread, tape } from './numbers.ts';
import { invitation, outsideWords, verdictWords } from './verdict.ts';

export const RECORD = {
	title: 'record',
	outcome: 'What came of it',
	bends: 'Bends, as drawn and as made',
	made: 'The tube as made; the broken line is the drawing',
	planned: 'The tube as far as it was made, the rest as planned; the broken line is the drawing',
	checks: 'Checks',
	pulls: 'Every pull',
	events: 'What else happened',
	open: 'Not measured, and left to do',
	cautions: 'Cautions',
	log: 'The log that this was made from',
	none: 'Nothing.',
	asTold:
		'Where aimed at differs from drawn, a correction was taken. Marks and turns count as asked for, unless it was told that they were set otherwise. The far end and the straights are worked out from the readings; nobody measured them.',
	columns: {
		bend: 'bend',
		drawn: 'drawn',
		aimed: 'aimed at',
		made: 'made',
		giveOrTake: 'give or take',
		verdict: 'against what was aimed at',
		inside: 'verdict',
		turn: 'turn drawn',
		turnMade: 'turn made',
		straight: 'straight before drawn',
		straightMade: 'straight before made',
		check: 'check',
		read: 'read',
		within: 'within',
		off: 'off',
		line: 'line of the log',
		setUp: 'set-up',
		snug: 'snug',
		stop: 'stop',
		held: 'held',
		released: 'after release',
		measured: 'measured',
		remark: 'remark',
		mark: 'mark drawn',
		markMade: 'mark set',
		time: 'time',
		what: 'what',
	},
} as const;

const STATES = { open: 'interrupted', done: 'finished', scrapped: 'scrapped' } as const;

/** What the record is of, each with its name. */
export function recordHead(
	view: SessionView,
	program: string,
	clock: WallClock,
): (readonly [name: string, value: string])[] {
	const { job } = view;
	const { tube, tooling, units } = job;
	return [
		['Session', foreignName(view.id)],
		['State', STATES[view.status]],
		['Begun', foreign(localMinute(view.started, clock))],
		['Ended', view.ended === null ? '-' : foreign(localMinute(view.ended, clock))],
		['Tube', `${trimmed(tube.od, 4)} x ${trimmed(tube.wall, 4)} ${units}, ${foreignName(tube.material.name)}`],
		['Heat', view.heat === undefined ? 'not given' : foreignName(view.heat)],
		['Bender, die', `${foreignName(tooling.bender)}, ${foreignName(tooling.die)}, radius ${tape(tooling.clr, job)}`],
		['Program', `pullbook ${foreignName(program)}`],
	];
}

/** Whether the tube fits and how well that is known, or why nobody can say. */
export function outcomeWords(state: State, { job, asBuilt, status, bends }: SessionView): string[] {
	const { phase } = state.finished ?? state;
	if (phase.at === 'done' && phase.scrapped !== null) return [`The tube was scrapped: ${foreign(phase.scrapped)}.`];
	const off = `${fine(asBuilt.endOffset, job)} from its place and ${angle(asBuilt.endAngle)} from its direction`;
	const verdict = status === 'done' ? verdictOf(state) : null;
	if (verdict === null) return [`The tube is not finished. By the numbers in force the far end would be ${off}.`];
	const { sd, fits, chance, shape } = verdict;
	const invited = invitation(fits, chance, tellsMostOf(state, verdict));
	return [
		`${verdictWords(fits, chance)} ${outsideWords(outsideOf(job, bends), job)}`,
		`The far end is ${off}, give or take ${readingSpread(sd.endOffset, 'length', job)} and ${about(sd.endAngle)}.`,
		`Farthest corner off its place: bend ${shape.bend}, by ${fine(shape.off, job)}.`,
		...(invited === null ? [] : [invited]),
	];
}

/** The bends that were made outside of the drawing's own band. */
function outsideOf(job: SessionView['job'], bends: SessionView['bends']): number[] {
	return bends.flatMap(({ design, made }, i) => (made !== null && isInside(made.angle, job, design) ? [] : [i + 1]));
}

function isInside(made: number, job: SessionView['job'], target: number): boolean {
	const { low, high } = bendLimits(job, target);
	return made >= low && made <= high;
}

/** How a bend came out: `0.3° short, inside`. */
export function bendVerdict(
	{ target, made }: Pick<SessionView['bends'][number], 'target' | 'made'>,
	job: SessionView['job'],
): string {
	if (made === null) return 'not made';
	const off = made.angle - target;
	const size = Math.abs(off) < 0.05 ? 'as aimed' : `${angle(Math.abs(off))} ${off < 0 ? 'short' : 'over'}`;
	return `${size}, ${isInside(made.angle, job, target) ? 'inside' : 'outside'}`;
}

/** What became of a pull besides its readings. */
export function pullRemark(pull: PullView): string {
	const opened = stages(pull).slice(1);
	const remarks = [
		...(pull.void ? ['taken back: the numbers do not count'] : []),
		...opened.map((readings) => `opened to ${readings.map((x) => formatAngle(x, 2)).join(', ')}`),
	];
	return remarks.join('; ');
}

/** Events that a reader who was not there would ask about. */
const TOLD: ReadonlySet<Event['type']> = new Set<Event['type']>([
	'doubt-settled',
	'measuring-skipped',
	'check-skipped',
	'plan-chosen',
	'relief-chosen',
	'bend-reopened',
	'tube-scrapped',
	'record-voided',
	'reading-amended',
	'note-written',
	'session-left',
	'session-resumed',
]);

/** The lines of the log that are no plain reading: notes, corrections chosen, what was opened, set aside or taken back. */
export function eventRows(lines: readonly Answered[], job: SessionView['job'], clock: WallClock): string[][] {
	return lines
		.filter(({ events, void: gone }) => gone || events.some(({ type }) => TOLD.has(type)))
		.map((line) => [
			`${line.entry}`,
			foreign(localMinute(line.at, clock)),
			`${answeredWords(line, job)}${line.void ? ' (taken back)' : ''}`,
		]);
}

/** What was not made, what nobody measured, and what is left to do or to look at. */
export function openWords(state: State, { bends, checks, status, job }: SessionView): string[] {
	const open = bends.flatMap(({ made, pulls }, i) => {
		const isMeasured = pulls.some((pull) => !pull.void && pull.measured.length > 0);
		if (made === null) return [`Bend ${i + 1} was not made.`];
		return isMeasured ? [] : [`Bend ${i + 1} was not measured with the finder: its angle is known by the dial.`];
	});
	const left =
		status === 'done'
			? finishList(state).map((fact) => finishWords(fact, job))
			: checks.flatMap(({ name, reading }) => (reading === null ? [`Check ${foreignName(name)} was not read.`] : []));
	return [...open, ...left];
}

/** Whether a check lies inside its tolerance. `trim`: how much of its reading is trim that was still on. */
export function checkVerdict(fits: boolean | null, trim: number, job: SessionView['job']): string {
	if (fits === null) return '-';
	const word = fits ? 'inside' : 'outside';
	return Math.abs(trim) < 1e-9 ? word : `${word}: ${notNothing(trim, job)} of what was read is trim`;
}

/** The straight after the last bend, which has no row of its own. */
export function lastStraight({ job, asBuilt }: SessionView, drawn: number): string {
	return `Last straight: ${fine(drawn, job)} drawn, ${fine(asBuilt.straights.at(-1)!, job)} made, trim not counted.`;
}

/** Where the log lies and how it is known again. */
export function logWords({ path, lines, sha256 }: { path: string; lines: number; sha256: string }): string[] {
	return [
		`${foreign(path)}, ${lines === 1 ? 'one line' : `${lines} lines`}.`,
		`SHA-256 of ${lines === 1 ? 'that line' : `those ${lines} lines`}: ${sha256}`,
		`To compare: head -n ${lines} FILE | sha256sum. A line that was changed since gives another sum.`,
	];
}
