import type { SetAsk } from '../../../session/protocol/asks.ts';
import { type CautionFact, GENERAL_CAUTIONS } from '../../../session/protocol/facts/caution.ts';
import { cautionWords } from '../../../words/caution.ts';
import { growthWords } from '../../../words/growth.ts';
import { lookPoints, pieceLong, SEAM_HERE } from '../../../words/session/ask-set.ts';
import { type Line, line, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import { ROOMY_ROWS, type Room, type Section } from './page.ts';

/** What to mind at this seat and was not said on a page before it. */
export function setCautions({ job }: SessionState, ask: SetAsk, columns: number): Line[] {
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
	return [
		...grown.map(({ growth, die }) => growthWords(growth, die)),
		pieceLong(ask.mark.fromStart + ask.mark.fromFarEnd, job),
	];
}

/** Rows of a window from which each point of the check list has a line of its own. */
const LIST_ROWS = 36;

/** What to look at before the pull, until somebody knows it by heart. */
export function checkList({ display }: SessionState, ask: SetAsk, room: Room): Section {
	if (!display.checklist) return { rank: 0, lines: [] };
	const { title, points, few, fewest } = lookPoints(ask);
	if (room.window < LIST_ROWS) {
		return { rank: 0, lines: wrapped(room.window < ROOMY_ROWS ? fewest : few, room.columns, 'plain', 2) };
	}
	return {
		rank: 0,
		lines: [line(title), ...points.flatMap((point) => wrapped(`- ${point}`, room.columns, 'plain', 2))],
	};
}

/** How near to inside or outside of a bend a seam from the side may come, in degrees round, before it is said. */
const SEAM_NEAR = 30;

/** Whether a seam that lies at the side of bend 1 lies inside or outside of a bend whose mark lies so many degrees round. */
export function seamInBend(aroundDegrees: number): boolean {
	return Math.abs(Math.abs(aroundDegrees) - 90) < SEAM_NEAR;
}

/** A welded seam was put to the side of bend 1; a rotation may bring it where it must not lie. */
export function seamHere({ around }: SetAsk, columns: number): Line[] {
	return seamInBend(around.degrees) ? wrapped(SEAM_HERE, columns, 'alert', 2) : [];
}
