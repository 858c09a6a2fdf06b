import type { ReadSession } from '../journal/catalogue.ts';
import { type BendStep, type BendStory, storyOf } from '../review/story.ts';
import { answered } from '../session/log/answered.ts';
import { readThrough } from '../session/log/read-back.ts';
import type { State } from '../session/log/state.ts';
import { tellsMostOf, verdictOf } from '../session/report/verdict.ts';
import type { SessionView } from '../session/report/views.ts';
import type { Job } from '../tube/job.ts';
import { capital, trimmed } from '../units/format.ts';
import { answeredWords } from './answered.ts';
import { pieceWords } from './batch.ts';
import { bentAsWords } from './bent-as.ts';
import { checkValueWords } from './doubt.ts';
import { foreign, foreignName } from './foreign.ts';
import { journalWords } from './journal.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { about, angle, fine, readingSpread } from './numbers.ts';
import { importedWords, SIMULATED, STATUS_WORDS } from './session-list.ts';
import { bendOutcomeWords, bendStepWords, TAKEN_BACK } from './story-bend.ts';
import { tubeSize } from './tube-size.ts';
import { invitation, verdictWords } from './verdict.ts';

/** A kept session as a page of text, its lines as long as they come: what was aimed at, what was done, what came of it, and every record. */
export function reviewText(kept: ReadSession, clock: WallClock): string {
	const story = storyOf(readThrough(kept.records));
	const { state, view } = story;
	return [
		...storyHeading(view, kept, clock),
		'',
		...story.bends.flatMap((bend) => bendLines(bend, view.job)),
		...checkResultLines(view),
		'',
		...asBuiltLines(state, view),
		'',
		...recordLines(state, clock),
	].join('\n');
}

function storyHeading(view: SessionView, kept: ReadSession, clock: WallClock): string[] {
	const { job } = view;
	const problem =
		kept.problem === null ? [] : [`CAUTION: ${journalWords(kept.problem)}`, 'Below is what can be read here.'];
	const { open } = STATUS_WORDS;
	const stands = kept.damage === null ? `${open}: it can be resumed` : 'not ended as far as it can be read';
	const as = bentAsWords(job);
	return [
		`${foreignName(job.name)}   session ${foreignName(view.id)}`,
		`${foreign(localMinute(view.started, clock))}, ${view.status === 'open' ? stands : STATUS_WORDS[view.status]}`,
		`${foreignName(job.tube.material.name)}, ${tubeSize(job.tube)} ${job.units}, bender ${foreignName(job.tooling.bender)}, die ${foreignName(job.tooling.die)}`,
		...(view.simulated ? [SIMULATED] : []),
		...(as === null ? [] : [as]),
		...pieceAndHeat(view),
		...(kept.imported === null ? [] : [importedWords(kept.imported, clock)]),
		...problem,
	];
}

/** Which piece of how many, and the heat of its tube. */
function pieceAndHeat({ piece, quantity = 1, heat }: SessionView): string[] {
	const told = [
		...(piece === undefined ? [] : [pieceWords({ number: piece, wanted: quantity })]),
		...(heat === undefined ? [] : [`heat ${foreignName(heat)}`]),
	];
	return told.length === 0 ? [] : [`${capital(told.join(', '))}.`];
}

function bendLines(bend: BendStory, job: Job): string[] {
	return [
		`Bend ${bend.bend}: ${bendOutcomeWords(bend)}`,
		...bend.steps.filter(isWorthALine).map((step) => `   ${bendStepWords(step, job)}`),
	];
}

/** What was decided stands among the lines of the log below. */
function isWorthALine({ step }: BendStep): boolean {
	return !['still', 'out', 'skipped', 'again', 'opened', 'taken', 'reopened'].includes(step);
}

function checkResultLines({ job, checks }: SessionView): string[] {
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
