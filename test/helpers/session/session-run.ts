import { askedIn } from '../../../src/session/log/asked.ts';
import { initial } from '../../../src/session/log/fold.ts';
import { isEvent } from '../../../src/session/log/form/event.ts';
import type { Start } from '../../../src/session/log/start.ts';
import { coldPrior } from '../../../src/session/log/start.ts';
import type { State } from '../../../src/session/log/state.ts';
import { outputsAfter, standing } from '../../../src/session/outputs.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import type { Output } from '../../../src/session/protocol/notes.ts';
import { parseAnswer } from '../../../src/session/protocol/parse-answer.ts';
import { stepped } from '../../../src/session/step.ts';
import { modelName } from '../../../src/springback/model-name.ts';
import type { Job } from '../../../src/tube/job.ts';

/** A session in memory: the core alone, without a disk or a shell. */
export interface Run {
	state: State;
	outputs: Output[];
}

export function startOf(job: Job): Start {
	return {
		id: 'test',
		program: 'test',
		at: '2026-01-01T00:00:00.000Z',
		job,
		jobFile: '/none',
		jobSource: {},
		learn: false,
		model: modelName(),
		...coldPrior(job),
	};
}

export function begin(job: Job): Run {
	const state = initial(startOf(job));
	return { state, outputs: [standing(state, 'log')] };
}

/** Gives one raw answer, as the line mode does. */
export function give(run: Run, raw: unknown): Run {
	const { state } = run;
	const parsed = parseAnswer(raw, state);
	const asked = askedIn(run.outputs.at(-1));
	const step = 'refused' in parsed ? parsed : stepped(parsed, state, { at: '2026-01-01T00:00:01.000Z', asked });
	if ('refused' in step) return { state, outputs: [step.refused, standing(state, 'log')] };
	// Else its log could not be read back.
	if (asked === undefined) throw new Error('an ask has not the form of one');
	for (const event of step.record.events)
		if (!isEvent(event)) throw new Error(`an event has not the form of one: ${JSON.stringify(event)}`);
	return { state: step.next, outputs: outputsAfter(state, step.next, step.record, 'log') };
}

export function giveAll(run: Run, ...raws: unknown[]): Run {
	return raws.reduce<Run>(give, run);
}

/** The open ask of a kind; throws where another thing stands open. */
export function open<K extends Ask['ask']>(run: Run, kind: K): Extract<Ask, { ask: K }> {
	const last = run.outputs.at(-1);
	if (!last || !('ask' in last) || last.ask !== kind) {
		throw new Error(`expected the ask "${kind}", found ${JSON.stringify(last)}`);
	}
	return last as Extract<Ask, { ask: K }>;
}
