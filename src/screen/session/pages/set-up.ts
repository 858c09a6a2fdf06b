import type { SetAsk } from '../../../session/protocol/asks.ts';
import { type CautionFact, GENERAL_CAUTIONS } from '../../../session/protocol/facts/caution.ts';
import { cautionWords } from '../../../words/caution.ts';
import { growthWords } from '../../../words/growth.ts';
import { dial, tape } from '../../../words/numbers.ts';
import { type Line, line, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { seamInBend } from '../set-words.ts';
import { ROOMY_ROWS, type Room, type Section } from './page.ts';

/** What to mind at this seat and was not said on a page before it. */
export function cautions({ job }: SessionState, ask: SetAsk, columns: number): Line[] {
	return ask.cautions
		.filter(({ code }) => !SAID.has(code))
		.flatMap((fact) => wrapped(`! ${cautionWords(fact, job)}`, columns, 'alert', 2));
}

/** The face stands among the words about the mark, the piece in a line of its own; that marks are planned for a radius, among those about it; hand and
 * end, what is dangerous about the work, and which die goes in, stood on the session's first page. */
const SAID: ReadonlySet<CautionFact['code']> = new Set([
	...GENERAL_CAUTIONS,
	'opposite-face',
	'cut-length',
	'growth-expected',
	'bent-as',
	'change-die',
]);

/** How long the piece is taken to be, before anything is bent: the marks from the far end rest on it. */
export function lengthToCutWords({ job, details }: SessionState, ask: SetAsk): string[] {
	if (ask.bend > 1 || ask.seat > 1 || details.length !== undefined) return [];
	const grown = ask.cautions.filter((caution) => caution.code === 'growth-expected');
	const length = tape(ask.mark.fromStart + ask.mark.fromFarEnd, job);
	return [
		...grown.map(({ growth, die }) => growthWords(growth, die)),
		`The piece should be ${length} long. If it is not, press * and tell its length.`,
	];
}

/** Rows of a window from which each point of the check list has a line of its own. */
const LIST_ROWS = 36;

/** What to look at before the pull, until somebody knows it by heart. */
export function checkList({ display }: SessionState, ask: SetAsk, room: Room): Section {
	if (!display.checklist) return { rank: 0, lines: [] };
	// With a bent tube the dial is only read: set to an expected number, it would show that number back and nothing of the tube.
	const zero = ask.seat === 1 ? [`dial at ${dial(ask.pointer)}`] : [];
	const points = [
		`right face up: ${FACE[ask.face]}`,
		'tube level: gap to a long rule even along its length',
		'slack pulled out',
		...zero,
		'die tight',
	];
	const fewest = `Look: ${['face up', 'level', 'slack out', ...zero, 'die tight'].join('; ')}.`;
	if (room.window < ROOMY_ROWS) return { rank: 0, lines: wrapped(fewest, room.columns, 'plain', 2) };
	const few = `Look: ${['right face up', 'level, gap to a long rule even', 'slack out', ...zero, 'die tight'].join('; ')}.`;
	if (room.window < LIST_ROWS) return { rank: 0, lines: wrapped(few, room.columns, 'plain', 2) };
	return {
		rank: 0,
		lines: [line('Before the pull'), ...points.flatMap((point) => wrapped(`- ${point}`, room.columns, 'plain', 2))],
	};
}

const FACE: Record<SetAsk['face'], string> = {
	same: 'the line',
	opposite: 'opposite the line',
	other: 'the mark round the tube',
};

/** A welded seam was put to the side of bend 1; a rotation may bring it where it must not lie. */
export function seam({ around }: SetAsk, columns: number): Line[] {
	if (!seamInBend(around.degrees)) return [];
	const text = "A welded seam put to bend 1's side comes to the inside or outside of this bend: watch it there.";
	return wrapped(text, columns, 'alert', 2);
}
