import type { DecideAsk, TubeOutcome, Tweak } from '../../../session/protocol/asks.ts';
import type { Job } from '../../../tube/job.ts';
import { inTen } from '../../../words/chance.ts';
import { angle, angleGiveOrTake, dial, fine, measureOf, shown, tape } from '../../../words/numbers.ts';
import { CHOICE, ONLY_BACK } from '../../../words/screen/usual.ts';
import type { Choice } from '../../shell/prompt.ts';
import { type Line, line, wrapped } from '../../text/line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { answer, BACK, type PageView, type Section } from './page.ts';
import { reliefStep } from './reopen.ts';

/** Whether there is anything to weigh besides the bend at work. */
export function canWeigh({ ask }: SessionState): boolean {
	return ask?.ask === 'decide' && (ask.tweaks.length > 0 || ask.rescue !== undefined);
}

/** What accepting comes to, and what a little more pull or relief at each made bend would do, best first. */
export function whatIfPage(state: SessionState): PageView {
	const ask = state.ask?.ask === 'decide' ? state.ask : null;
	const tweaks = ask?.tweaks ?? [];
	return {
		title: 'What if',
		prompt: {
			label: CHOICE,
			choices: tweaks.map((tweak) => choice(state, tweak)),
			back: BACK,
			empty: tweaks.length === 0 ? ONLY_BACK : 'Write a number to go back to that bend, or / to go back.',
		},
		body: ({ columns }) => (ask === null ? [] : sections(ask, state.job, columns)),
	};
}

function choice(state: SessionState, { bend, do: how, by }: Tweak): Choice<Step> {
	const reopen = { action: { do: 'reopen', bend, how } } as const;
	return how === 'pull'
		? { label: `bend ${bend}: pull it ${dial(by)} further`, step: answer(reopen.action) }
		: { label: `bend ${bend}: open it by ${dial(by)}`, step: reliefStep(state, bend, reopen) };
}

function sections({ accepted, tweaks, rescue }: DecideAsk, job: Job, columns: number): Section[] {
	const lines = (lead: string, outcome: TubeOutcome): Line[] =>
		wrapped(`${lead}: ${becomes(outcome, job)}.`, columns, 'plain', 2);
	const stock = rescue?.stock;
	return [
		{ rank: 0, lines: lines('This bend taken as it is, the rest corrected', accepted) },
		...tweaks.map((tweak, i) => ({ rank: 1 + i, lines: lines(`${i + 1}  ${about(tweak)}`, tweak) })),
		{
			rank: 1,
			lines: stock
				? [
						line('Nothing makes it fit everywhere. If it is given up:'),
						...wrapped(
							`straight and good for use: ${tape(stock.behind, job)} behind the last bend${stock.again ? ', enough to begin anew' : ''}; ${tape(stock.straights[0] ?? 0, job)} before the first.`,
							columns,
							'plain',
							2,
						),
					]
				: [],
		},
	];
}

function about({ expect, chance }: Tweak): string {
	return `it lands at ${angleGiveOrTake(expect)}; the tube then fits: ${inTen(chance)}`;
}

function becomes({ endOffset, endAngle, checks }: TubeOutcome, job: Job): string {
	const read = checks.map(({ name, value }) => `${name} ${shown(value, measureOf('check', job, name), job)}`);
	return [`far end off by ${fine(endOffset, job)} and ${angle(endAngle)}`, ...read].join(', ');
}
