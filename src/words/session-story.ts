import type { ReadSession } from '../journal/catalogue.ts';
import { answered } from '../session/log/answered.ts';
import { readBack } from '../session/log/read-back.ts';
import type { State } from '../session/log/state.ts';
import type { PullView, SetUpView } from '../session/report/set-ups.ts';
import { stages } from '../session/report/stages.ts';
import { tellsMostOf, verdictOf } from '../session/report/verdict.ts';
import { bendLimits, type SessionView, sessionView } from '../session/report/views.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import { answeredWords } from './answered.ts';
import { bentAsWords } from './bent-as.ts';
import { checkValueWords } from './doubt.ts';
import { foreign, foreignName } from './foreign.ts';
import { journalWords } from './journal.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { about, angle, angleGiveOrTake, fine, readingSpread } from './numbers.ts';
import { setUpWords } from './set-up.ts';
import { invitation, verdictWords } from './verdict.ts';

const TAKEN_BACK = '  (taken back)';

/** A kept session as a page of text, its lines as long as they come: what was aimed at, what was done, what came of it, and every record. */
export function reviewText(kept: ReadSession, clock: WallClock): string {
	const state = readBack(kept.records);
	const view = sessionView(state);
	return [
		...heading(view, kept, clock),
		'',
		...view.bends.flatMap((bend, i) => bendLines(view, bend, i)),
		...checkLines(view),
		'',
		...asBuiltLines(state, view),
		'',
		...recordLines(state, clock),
	].join('\n');
}

function heading(view: SessionView, kept: ReadSession, clock: WallClock): string[] {
	const { job } = view;
	const problem =
		kept.problem === null ? [] : [`CAUTION: ${journalWords(kept.problem)}`, 'Below is what can be read here.'];
	const open = kept.damage === null ? 'interrupted: it can be resumed' : 'not ended as far as it can be read';
	const states = { open, done: 'finished', scrapped: 'scrapped' };
	const as = bentAsWords(job);
	return [
		`${foreignName(job.name)}   session ${foreignName(view.id)}`,
		`${foreign(localMinute(view.started, clock))}, ${states[view.status]}`,
		`${foreignName(job.tube.material.name)}, ${formatLength(job.tube.od, job.units)} x ${formatLength(job.tube.wall, job.units)}, bender ${foreignName(job.tooling.bender)}, die ${foreignName(job.tooling.die)}`,
		...(as === null ? [] : [as]),
		...problem,
	];
}

function bendLines(view: SessionView, bend: SessionView['bends'][number], index: number): string[] {
	const made = bend.made ? `made ${angleGiveOrTake(bend.made)}` : 'not finished';
	const { low, high } = bendLimits(view.job, bend.target);
	const aim = `target ${formatAngle(bend.target, 2)} (${trimmed(low, 2)} to ${trimmed(high, 2)}), drawing ${formatAngle(bend.design, 2)}`;
	const steps = [
		...bend.setUps.map((setUp) => ({ entry: setUp.entry, text: setUpLine(setUp, view.job) })),
		...bend.pulls.map((pull) => ({ entry: pull.entry, text: pullLine(pull) })),
	];
	const inOrder = steps.sort((a, b) => a.entry - b.entry).map(({ text }) => text);
	return [`Bend ${index + 1}: ${made}; ${aim}`, ...inOrder];
}

function setUpLine(setUp: SetUpView, job: SessionView['job']): string {
	const asked = setUpWords(setUp, job);
	return `   set-up ${setUp.seat}${asked === '' ? '' : `: ${asked}`}${setUp.void ? TAKEN_BACK : ''}`;
}

function pullLine(pull: PullView): string {
	const [pulled = [], ...opened] = stages(pull);
	const read = (word: string, readings: readonly number[]) =>
		readings.length > 0 ? `${word}${readings.map((x) => ` ${formatAngle(x, 2)}`).join(',')}` : '';
	const measured = `${read(', measured', pulled)}${opened.map((readings) => read(', opened to', readings)).join('')}`;
	const released = pull.released === null ? '' : `, ${formatAngle(pull.released, 2)} after release`;
	const pointer = pull.pointer === null ? '' : `, snug ${formatAngle(pull.pointer, 2)}`;
	const undone = pull.void ? TAKEN_BACK : '';
	return `   set-up ${pull.seat}${pointer}: stop ${formatAngle(pull.stop, 2)}, held ${formatAngle(pull.loaded, 2)}${released}${measured}${undone}`;
}

function checkLines({ job, checks }: SessionView): string[] {
	return checks.map(({ name, design, reading }) => {
		const check = job.checks.find((each) => each.name === name);
		const told = (value: number) => (check ? checkValueWords(value, check.kind, job) : trimmed(value, 3));
		const within = check ? `, within ${told(check.tolerance)}` : '';
		return `Check ${foreignName(name)}: ${reading === null ? 'not read' : `read ${told(reading)}`}; drawing ${told(design)}${within}`;
	});
}

function asBuiltLines(state: State, view: SessionView): string[] {
	const { phase } = state;
	if (phase.at === 'done' && phase.scrapped !== null) return [`The tube was scrapped: ${foreign(phase.scrapped)}.`];
	const { endOffset, endAngle } = view.asBuilt;
	const { job } = view;
	const off = `${fine(endOffset, job)} from its place, ${angle(endAngle)} from its direction.`;
	const end = `Far end ${off}`;
	if (view.status !== 'done') return [`By the numbers in force now the far end is ${off}`];
	const verdict = verdictOf(state);
	if (verdict === null) return [end];
	const { sd, fits, chance, shape } = verdict;
	const give = `Give or take ${readingSpread(sd.endOffset, 'length', job)} and ${about(sd.endAngle)}.`;
	const invited = invitation(fits, chance, tellsMostOf(state, verdict));
	return [
		end,
		`${give} ${verdictWords(fits, chance)}`,
		...(invited === null ? [] : [invited]),
		`Farthest corner off its place: bend ${shape.bend}, by ${fine(shape.off, job)}.`,
	];
}

function recordLines(state: State, clock: WallClock): string[] {
	const lines = answered(state).map((line) => {
		const undone = line.void ? TAKEN_BACK : '';
		const text = answeredWords(line, state.start.job);
		return `${String(line.entry).padStart(4)}  ${foreign(clock(line.at)?.time ?? line.at)}  ${text}${undone}`;
	});
	const offset = clock(state.start.at)?.offset ?? 'an unknown time';
	return [`The log, line by line (times at ${offset} from UTC):`, ...lines];
}
