import { GENERAL_CAUTIONS } from '../../session/cautions.ts';
import type { SetAsk } from '../../session/protocol.ts';
import type { Job } from '../../tube/job.ts';
import { trimmed } from '../../units/format.ts';
import { type Line, line, span, wrapped } from '../line.ts';
import { type BigNumber, bigNumbers } from '../parts/big-numbers.ts';
import type { SessionState } from '../session-state.ts';
import { angle, dial, faceWords, READINGS, shown, signed, tape, WAYS } from '../words.ts';
import { answer, numberField, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';

/** The tube goes into the die: where the mark is, and which way and how far the tube is turned. */
export function setPage(state: SessionState, ask: SetAsk): PageView {
	const ready = (pointer?: number) =>
		answer({ do: 'ready', ...state.details, ...(pointer === undefined ? {} : { pointer }) });
	return {
		title: ask.seat === 1 ? 'Set the tube' : `Set the tube again (seat ${ask.seat})`,
		prompt: {
			label: 'Dial with the tube snug, before pulling (may be left out)',
			...numberField('angle', state.job, ready),
			plus: { label: 'ready', step: ready() },
			slash: SLASH,
			star: STAR,
			empty: 'Press + when the tube is set, or write what the dial reads now and press Enter.',
		},
		body: (room) => sections(state, ask, room),
	};
}

function sections(state: SessionState, ask: SetAsk, room: Room): Section[] {
	const { job } = state;
	return [
		{ rank: 0, lines: bigNumbers([markNumber(ask, job, true), turnNumber(ask)], room.columns, room.ink) },
		{ rank: 0, lines: [target(ask), ...details(state)] },
		{ rank: 1, lines: ask.cautions.filter(isNew).flatMap((text) => wrapped(`! ${text}`, room.columns, 'alert', 2)) },
		{ rank: 2, lines: otherWays(ask, job, room.columns) },
		{ rank: 3, lines: sight(ask, room.columns) },
	];
}

/** The general cautions stood on the session's first page. */
function isNew(caution: string): boolean {
	return !GENERAL_CAUTIONS.includes(caution);
}

export function markNumber(ask: SetAsk, job: Job, chief: boolean): BigNumber {
	return { label: `MARK, ${job.units}`, value: ask.mark.tape, below: 'from the start end', chief };
}

export function turnNumber(ask: SetAsk): BigNumber {
	const { degrees, way } = ask.tubeTurn;
	const below = ask.seat > 1 && way === 'none' ? 'leave as it is' : WAYS[way];
	return { label: 'TURN, degrees', value: trimmed(degrees, 1), below };
}

function target(ask: SetAsk): Line {
	const moved = ask.target === ask.design ? '' : ` (drawing ${angle(ask.design)})`;
	const plan = ask.plan === 'old' ? '   numbers of before the correction' : '';
	return [span('then bend to '), span(angle(ask.target), 'strong'), span(moved), span(plan, 'alert')];
}

function details({ details: given, job }: SessionState): Line[] {
	const lines = Object.entries(given).map(([of, value]) => {
		const measure = of === 'rotation' ? 'angle' : 'length';
		return line(`+ also tells: ${READINGS[of as keyof typeof given]} ${shown(value, measure, job)}`, 'good');
	});
	return lines;
}

function otherWays(ask: SetAsk, job: Job, columns: number): Line[] {
	const { mark } = ask;
	const last = mark.fromLastBend === null ? '' : `, from the last bend's end ${tape(mark.fromLastBend, job)}`;
	const moved =
		Math.abs(mark.moved) < job.tooling.tape / 2 ? '' : `, moved ${signed(tape(mark.moved, job))} from the drawing`;
	return [
		...wrapped(`Same mark: from the far end ${tape(mark.fromFarEnd, job)}${last}${moved}.`, columns, 'plain', 2),
		...wrapped(`The mark goes ${faceWords(ask, job)}.`, columns, 'plain', 2),
	];
}

function sight(ask: SetAsk, columns: number): Line[] {
	const dialNow = ask.pointer === 0 ? [] : [`The dial should read about ${dial(ask.pointer)} with the tube snug.`];
	const turned = ask.tubeTurn.way === 'clockwise' || ask.tubeTurn.way === 'counterclockwise';
	const seen = turned
		? ['Turn as seen from the clamp side of the die, looking along the straight to the far end.']
		: [];
	return [...seen, ...dialNow].flatMap((text) => wrapped(text, columns, 'quiet', 2));
}
