import type { DecideAsk, Tweak } from '../../../session/protocol/asks.ts';
import type { Job } from '../../../tube/job.ts';
import { CHOICE, ONLY_BACK } from '../../../words/screen/usual.ts';
import { WHAT_IF } from '../../../words/session/ask-decide.ts';
import type { Choice } from '../../shell/prompt.ts';
import { type Line, line, wrapped } from '../../text/line.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, type PageView, type Section } from './page.ts';
import { reliefStep } from './reopen.ts';

/** Whether there is anything to weigh besides the bend at work. */
export function isMoreToTell({ ask }: SessionState): boolean {
	return ask?.ask === 'decide' && (ask.tweaks.length > 0 || ask.rescue !== undefined);
}

/** What accepting comes to, and what a little more pull or relief at each made bend would do, best first. */
export function whatIfPage(state: SessionState): PageView {
	const ask = state.ask?.ask === 'decide' ? state.ask : null;
	const tweaks = ask?.tweaks ?? [];
	return {
		title: WHAT_IF.title,
		prompt: {
			label: CHOICE,
			choices: tweaks.map((tweak) => tweakChoice(state, tweak)),
			back: BACK,
			empty: tweaks.length === 0 ? ONLY_BACK : WHAT_IF.empty,
		},
		body: ({ columns }) => (ask === null ? [] : whatIfSections(ask, state.job, columns)),
	};
}

function tweakChoice(state: SessionState, tweak: Tweak): Choice<SessionStep> {
	const { bend, do: how } = tweak;
	const reopen = { action: { do: 'reopen', bend, how } } as const;
	const step = how === 'pull' ? answer(reopen.action) : reliefStep(state, bend, reopen);
	return { label: WHAT_IF.choice(tweak), step };
}

function whatIfSections({ accepted, tweaks, rescue }: DecideAsk, job: Job, columns: number): Section[] {
	const lines = (text: string): Line[] => wrapped(text, columns, 'plain', 2);
	const stock = rescue?.stock;
	return [
		{ rank: 0, lines: lines(WHAT_IF.accepted(accepted, job)) },
		...tweaks.map((tweak, i) => ({ rank: 1 + i, lines: lines(WHAT_IF.tweak(i + 1, tweak, job)) })),
		{ rank: 1, lines: stock ? [line(WHAT_IF.nothing), ...lines(WHAT_IF.stock(stock, job))] : [] },
	];
}
