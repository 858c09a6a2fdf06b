import fc from 'fast-check';
import { ask } from '../../src/session/ask.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { sessionView } from '../../src/session/report/views.ts';
import type { Job } from '../../src/tube/job.ts';
import { asLine } from '../../src/words/line-mode.ts';
import { ARCH } from '../helpers/screen/fake-ports.ts';
import { randomAnswer } from '../helpers/session/random-answers.ts';
import { begin, give, type Run } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { finite } from './finite.ts';
import type { Cover, Subject } from './subject.ts';

const JOBS: Readonly<Record<string, () => Job>> = { hat: hatJob, one: plainJob, arch: () => ARCH };

/** Chosen by chance: which answer, how far off, and which extreme numbers it holds. */
interface Chosen {
	choice: number;
	size: number;
	numbers: number[];
	isWild: boolean;
}

interface Case {
	job: string;
	/** Answers as they were given, or choices of which they are made. */
	answers?: unknown[];
	chosen?: Chosen[];
}

/** Numbers at which arithmetic and geometry turn: of no instrument, of the smallest and the largest, and of the corners of a circle. */
const EXTREMES = [
	0, 5e-324, 1e-320, 1e-9, 0.001, 0.5, 1, 5, 45, 89.99, 90, 179.99, 180, 180.01, 359.99, 360, 1e3, 1e5, 1e6, 1e15,
	1e100, 1e154, 1e200, 1.7e308,
];

const chosen: fc.Arbitrary<Chosen> = fc.record({
	choice: fc.nat(400),
	size: fc.double({ min: 0, max: 0.999, noNaN: true }),
	numbers: fc.array(fc.oneof(fc.constantFrom(...EXTREMES), fc.constantFrom(...EXTREMES.map((x) => -x)), fc.double()), {
		minLength: 4,
		maxLength: 4,
	}),
	isWild: fc.nat(3).map((n) => n === 0),
});

function wild(open: Ask, { choice, numbers }: Chosen): unknown {
	const [a = 0, b = 0, c = 0, d = 0] = numbers;
	const entry = 1 + (choice % Math.max(1, open.entry));
	const bend = 1 + (choice % 4);
	const any = [
		{ undo: true },
		{ amend: { entry, reading: a } },
		{
			evidence: { kind: ['angle', 'farEndToMark', 'leg', 'mark', 'rotation'][choice % 5], bend, reading: Math.abs(a) },
		},
		{ reopen: { bend, do: choice % 2 ? 'pull' : 'relieve' } },
	];
	const own = {
		set: [
			{ ready: true },
			{ ready: true, pointer: a },
			{ ready: true, mark: b, rotation: c },
			{ ready: true, length: d },
		],
		pull: [{ loaded: Math.abs(a) }, { loaded: Math.abs(a), released: b }, { loaded: Math.abs(c) }],
		measure: [{ angle: Math.abs(a) }, { angles: [a, b] }, { angles: Array(20).fill(Math.abs(a)) }, { skip: true }],
		confirm: [{ keep: true }, { keep: true }, { keep: true }, { reading: a }],
		check: [{ reading: a }, { reading: Math.abs(b) }, { skip: true }],
		decide: [{ do: 'accept' }, { do: 'pull' }, { do: 'relieve' }],
	}[open.ask];
	const list = [...own, ...own, ...own, ...any];
	return list[choice % list.length];
}

/** The answers of a case, one for each state that it comes to. */
function answerAt({ answers, chosen: choices }: Case, at: number, open: Ask | null): unknown {
	if (answers !== undefined) return answers[at];
	const choice = choices?.[at];
	if (choice === undefined) return undefined;
	if (open === null) return { undo: true };
	return choice.isWild ? wild(open, choice) : randomAnswer(open, choice.choice, choice.size);
}

function walked(given: Case, each: (run: Run, answer: unknown) => void): Run {
	let run = begin(JOBS[given.job]!());
	for (let at = 0; ; at++) {
		const answer = answerAt(given, at, ask(run.state));
		if (answer === undefined) return run;
		run = give(run, answer);
		each(run, answer);
	}
}

/** Leaving and taking back are taken in every state, as far as there is something to take back. */
function holdsOut(run: Run): void {
	for (const answer of [{ quit: true }, { undo: true }]) {
		const [first] = give(run, answer).outputs;
		if (first === undefined || !('note' in first) || first.note !== 'refused') continue;
		const [why] = first.reason;
		if (why?.code !== 'nothing-to-undo') throw new Error(`${JSON.stringify(answer)} was refused: ${why?.code}`);
	}
}

export const answers: Subject<Case> = {
	name: 'answers',
	cases: fc.record({
		job: fc.constantFrom(...Object.keys(JOBS)),
		chosen: fc.array(chosen, { minLength: 1, maxLength: 60, size: 'max' }),
	}),
	holds(given, cover: Cover) {
		const job = JOBS[given.job]!();
		const run = walked(given, (after, answer) => {
			finite([after.state, after.outputs]);
			const [first, last] = [after.outputs[0], after.outputs.at(-1)];
			for (const output of after.outputs) JSON.stringify(asLine(output, job));
			const refused = first !== undefined && 'note' in first && first.note === 'refused' ? first.reason[0]?.code : null;
			const [does = ''] = Object.keys(answer as object);
			cover(refused === null ? `taken: ${does}` : `refused: ${refused}`);
			if (last !== undefined) cover(`asked: ${'ask' in last ? last.ask : last.note}`);
			if (does === 'keep') holdsOut(after);
		});
		holdsOut(run);
		finite(sessionView(run.state));
		const records = JSON.parse(JSON.stringify(run.state.entries)) as typeof run.state.entries;
		finite(records.reduce(evolve, initial(run.state.start)));
	},
	kept(given) {
		const list: unknown[] = [];
		try {
			walked(given, (_, answer) => list.push(answer));
		} catch {
			// The answer that broke it is the next one.
			list.push(answerAt(given, list.length, lastAsk({ ...given, answers: list })));
		}
		return { job: given.job, answers: list };
	},
};

const lastAsk = (given: Case): Ask | null => ask(walked(given, () => {}).state);
