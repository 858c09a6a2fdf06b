import type { CheckAsk } from '../../../session/protocol/asks.ts';
import { measuredIn } from '../../../session/protocol/measured-in.ts';
import type { Job } from '../../../tube/job.ts';
import { checkWords, endsWords, includesWords } from '../../../words/checks.ts';
import { CHECK, checkValues, LEAST } from '../../../words/session/ask-measure.ts';
import { written } from '../../../words/session/number.ts';
import { NotTaken, type Prompt } from '../../shell/prompt.ts';
import { line, wrapped } from '../../text/line.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, expectedLine, numberField, type PageView, SLASH, STAR } from './page.ts';

/** A check on the tube itself. */
export function checkPage(state: SessionState, ask: CheckAsk): PageView {
	const { job } = state;
	const found = job.checks.find(({ name }) => name === ask.name);
	const { expected: value, drawing } = checkValues(ask, job);
	return {
		title: CHECK.title(ask.name),
		prompt: checkPrompt(state, ask),
		body: (room) => [
			{ rank: 0, lines: [expectedLine(value), line(drawing)] },
			{ rank: 1, lines: found === undefined ? [] : wrapped(`${checkWords(found)}.`, room.columns) },
			{
				rank: 1,
				lines:
					ask.includes === undefined
						? wrapped(found === undefined ? '' : endsWords(found), room.columns)
						: wrapped(includesWords(ask.includes, ask.expect.value, job), room.columns, 'alert'),
			},
		],
	};
}

function checkPrompt(state: SessionState, ask: CheckAsk): Prompt<SessionStep> {
	const rest = { slash: SLASH, star: STAR };
	if (ask.kind !== 'ovality') {
		const field = numberField(measuredIn('check', ask.kind), state.job, (reading) =>
			answer({ do: 'reading', reading }),
		);
		return {
			label: CHECK.label,
			...field,
			...rest,
			empty: CHECK.empty,
		};
	}
	return {
		label: CHECK.greatest,
		...numberField('length', state.job, (greatest) => ({
			step: 'draft',
			draft: { of: 'greatest', value: asWideAsTheTube(greatest, state.job) },
			page: { page: 'least', greatest },
		})),
		...rest,
		empty: CHECK.greatestEmpty,
	};
}

/** A bend flattens a tube: its greatest diameter is never below the tube's. Less by more than a caliper is off is the ratio, or a slip. */
const FLATTEST = 0.9;

function asWideAsTheTube(greatest: number, job: Job): number {
	if (greatest >= FLATTEST * job.tube.od) return greatest;
	const od = written(job.tube.od, 'length', job);
	throw new NotTaken(written(greatest, 'length', job), CHECK.narrow(od));
}

/** The second half of an ovality check: the least diameter, from which the ratio follows. */
export function leastPage(state: SessionState, greatest: number): PageView {
	const { job } = state;
	const field = numberField('length', job, (least) =>
		answer({ do: 'reading', reading: typedRatio(least, greatest, job) }),
	);
	return {
		title: LEAST.title,
		prompt: {
			label: LEAST.label,
			...field,
			back: BACK,
			empty: LEAST.empty,
		},
		body: (room) => [{ rank: 0, lines: wrapped(LEAST.kept(written(greatest, 'length', job)), room.columns) }],
	};
}

function typedRatio(least: number, greatest: number, job: Job): number {
	if (least > 0 && least <= greatest) return least / greatest;
	throw new NotTaken(written(least, 'length', job), LEAST.wrong(written(greatest, 'length', job)));
}
