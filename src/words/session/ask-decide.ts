import type { DecideAsk, StockLeft, TubeOutcome, Tweak } from '../../session/protocol/asks.ts';
import type { ToMeasure } from '../../session/protocol/kinds.ts';
import { capital } from '../../units/format.ts';
import { inTen } from '../chance.ts';
import { decideWords } from '../decide.ts';
import type { Wording } from '../lengths.ts';
import { about, angle, angleGiveOrTake, dial, fine, measureOf, shortOrOver, shown } from '../numbers.ts';
import { againLabel } from './again.ts';

/** What the page says on which it is decided what becomes of a bend. */
export const DECIDE = {
	title: 'Decide',
	plus: 'as advised',
	accept: 'take it as it is',
	pull: 'pull it further',
	open: (by?: number): string => (by === undefined ? 'open it a little' : `open it by ${angle(by)}`),
	backTo: (bend: number, how: 'pull' | 'relieve'): string =>
		`go back to bend ${bend} and ${how === 'pull' ? DECIDE.pull : DECIDE.open()}`,
	limit: 'The bender is at its largest angle.',
	why: 'Why',
} as const;

/** So many words are read at a glance. */
const AT_A_GLANCE = 6;

/** The advice in a few words: what has a long name of its own is called by it further down. */
export function headline({ advice, bend, of, open }: DecideAsk): string {
	switch (advice) {
		case 'accept':
			return `Take bend ${bend} as it is.`;
		case 'pull':
			return `Pull bend ${bend} further.`;
		case 'relieve':
			return open === undefined ? `Open bend ${bend}.` : `Open bend ${bend} by ${angle(open)}.`;
		case 'scrap':
			return 'Give the tube up.';
		case 'reopen':
			return `Go back to bend ${typeof of === 'number' ? of : bend}.`;
		case 'measure':
			return typeof of === 'object' ? measureHeadline(of) : `Measure bend ${bend} again.`;
	}
}

function measureHeadline(of: ToMeasure): string {
	const whole = againLabel(of);
	return whole.split(' ').length > AT_A_GLANCE ? 'Read that check again.' : `${capital(whole)}.`;
}

/** How the bend came out, over the two large numbers and under them, and in a line. */
export function cameOutWords({ bend, made, target, design }: DecideAsk) {
	return {
		made: { label: `BEND ${bend} MADE`, below: `give or take ${about(made.sd)}` },
		wanted: { label: 'WANTED', below: angle(target) === angle(design) ? 'as drawn' : `drawn ${angle(design)}` },
		line: `made ${angleGiveOrTake(made)}, ${againstTarget(made.angle, target)}`,
	} as const;
}

/** Against what is wanted: `0.4° short of 12°`. */
function againstTarget(made: number, target: number): string {
	const by = made - target;
	if (Math.abs(by) < 0.05) return `as wanted (${angle(target)})`;
	return `${shortOrOver(by)}${by < 0 ? ' of' : ''} ${angle(target)}`;
}

/** How far to open a bend, and the angle to read then: over the large numbers. */
export const OPENING = { by: 'OPEN BY', to: 'READ THEN' } as const;

/** What to know before a bend is opened. */
export const RELIEF = {
	title: (bend: number): string => `Caution: opening bend ${bend}`,
	plus: 'open it',
	empty: 'Press + to open the bend, / to go back.',
	sudden: 'It moves suddenly: keep hands and face out of its way, and measure after each time.',
} as const;

/** Going back to a bend that was taken. */
export const REOPEN = {
	title: 'Go back to a made bend',
	to: (bend: number): string => `Go back to bend ${bend}`,
	what: (mayOpen: boolean): string =>
		`A bend that was taken can be pulled further${mayOpen ? ' or opened a little' : ''}. Its checks follow, then the session goes on where it was.`,
} as const;

/** What a little more or less at a made bend would do. */
export const WHAT_IF = {
	title: 'What if',
	empty: 'Write a number to go back to that bend, or / to go back.',
	choice: ({ bend, do: how, by }: Tweak): string =>
		how === 'pull' ? `bend ${bend}: pull it ${dial(by)} further` : `bend ${bend}: open it by ${dial(by)}`,
	accepted: (outcome: TubeOutcome, style: Wording): string =>
		`Taken as it is, the rest corrected: ${becomes(outcome, style)}.`,
	tweak: (number: number, tweak: Tweak, style: Wording): string =>
		`${number}  Lands at ${angleGiveOrTake(tweak.expect)}. Chance to fit: ${inTen(tweak.chance)}. ${capital(becomes(tweak, style))}.`,
	nothing: 'Nothing makes the tube fit everywhere. If you give it up:',
	stock: ({ behind, again, straights }: StockLeft, style: Wording): string =>
		decideWords({ code: 'stock-left', behind, again, before: straights[0] ?? 0 }, style),
} as const;

function becomes({ endOffset, endAngle, checks }: TubeOutcome, style: Wording): string {
	const read = checks.map(({ name, value }) => `${name} ${shown(value, measureOf('check', style, name), style)}`);
	return [`far end off by ${fine(endOffset, style)} and ${angle(endAngle)}`, ...read].join(', ');
}
