import type { SetAsk } from '../../session/protocol/asks.ts';
import type { ReadingKind } from '../../session/protocol/kinds.ts';
import type { EndName } from '../../tube/job.ts';
import { foreignName } from '../foreign.ts';
import type { Wording } from '../lengths.ts';
import { angle, dial, measureOf, shown, tape } from '../numbers.ts';
import { READINGS, WAYS } from '../readings.ts';

/** What the page says at which the tube goes into the die; `again`: it was in it before. */
export const SET = {
	title: (setUp: number): string => (setUp === 1 ? 'Set the tube' : `Set the tube again, set-up ${setUp}`),
	label: (again: boolean): string =>
		again
			? 'What does the dial show with the tube snug?'
			: 'Set the tube, snug. What does the dial show? + leaves it out',
	plus: (again: boolean): string => (again ? 'not read' : 'ready'),
	empty: (again: boolean): string =>
		again
			? 'Write what the dial shows now and press Enter, or press + if you did not look.'
			: 'Press + when the tube is set, or write what the dial reads now and press Enter.',
	mark: 'MARK',
	turn: 'TURN',
} as const;

/** Under the large mark, and shorter for where it stands among words. */
export const markedFrom = (end: EndName): { below: string; brief: string } => ({
	below: `from the ${end} end`,
	brief: `from ${end.toUpperCase()}`,
});

/** Under the large turn. */
export function turnBelow({ seat, tubeTurn: { way } }: Pick<SetAsk, 'seat' | 'tubeTurn'>): string {
	return seat > 1 && way === 'none' ? 'leave as it is' : WAYS[way];
}

/** To which angle the bend goes, in its parts: what stands out, and what warns. */
export function goalWords(ask: SetAsk): { lead: string; angle: string; more: string; old: string } {
	const moved = angle(ask.target) === angle(ask.design) ? '' : ` (drawing ${angle(ask.design)})`;
	const on = ask.die === undefined ? '' : ` on die "${foreignName(ask.die)}"`;
	const old = ask.plan === 'old' ? '   old numbers, from before the correction' : '';
	return { lead: 'then bend to ', angle: angle(ask.target), more: `${moved}${on}`, old };
}

/** What else the key for `ready` tells. */
export function alsoTold(of: ReadingKind, value: number, style: Wording): string {
	return `+ also tells: ${READINGS[of]} ${shown(value, measureOf(of, style), style)}`;
}

/** How long the piece is taken to be. */
export const pieceLong = (length: number, style: Wording): string =>
	`The piece should be ${tape(length, style)} long. If it is not, press * and tell its length.`;

/** What to look at before the pull, each point by itself; in a small window all of them in a line. */
export function lookPoints({ face, pointer, seat }: SetAsk): {
	title: string;
	points: string[];
	few: string;
	fewest: string;
} {
	// With a bent tube the dial is only read: set to an expected number, it would show that number back and nothing of the tube.
	const zero = seat === 1 ? [`dial at ${dial(pointer)}`] : [];
	const { whole, brief } = ON_TOP[face];
	const rest = ['slack out', ...zero, 'die tight'];
	const line = [`${brief} on top`, 'level', ...rest].join(', ');
	return {
		title: 'Before you pull',
		points: [`${whole} on top`, 'tube level: an even gap to a long rule', ...rest],
		few: `Before you pull: ${line}.`,
		fewest: `Look: ${line}.`,
	};
}

/** Which face of the tube lies on top. */
const ON_TOP: Readonly<Record<SetAsk['face'], { whole: string; brief: string }>> = {
	same: { whole: 'the line', brief: 'line' },
	opposite: { whole: 'the face opposite the line', brief: 'other face' },
	other: { whole: 'the mark', brief: 'mark' },
};

/** A welded seam comes to lie where it must not. */
export const SEAM_HERE =
	'Watch a welded seam that you put at the side of bend 1: here it is at the inside or outside of the bend.';
