import type { PullAsk } from '../../session/protocol.ts';
import { doubtLoaded } from '../../springback/gates.ts';
import { trimmed } from '../../units/format.ts';
import { type Line, span, widthOf, wrapped } from '../line.ts';
import { type BigNumber, bigNumbers } from '../parts/big-numbers.ts';
import type { SessionState, Step } from '../session-state.ts';
import { angle, dial, percent, plusMinus } from '../words.ts';
import { markNumber, turnNumber } from './ask-set.ts';
import { answer, BACK, numberField, type PageView, type Room, type Section, SLASH, STAR } from './page.ts';

/** The pull: where to stop, with the mark and the turn beside it in the order of the hands. */
export function pullPage(state: SessionState, ask: PullAsk): PageView {
	return {
		title: `Pull ${ask.pull}`,
		prompt: {
			label: 'Dial at the end of the stroke, held under load',
			...numberField('angle', state.job, (loaded) => loadedStep(ask, loaded)),
			slash: SLASH,
			star: STAR,
			empty: 'Pull to the stop, hold, write what the dial reads and press Enter.',
		},
		body: (room) => sections(state, ask, room),
	};
}

/** A doubtful dial is answered at once: while the tube is still held it can be read again. */
function loadedStep({ stop }: PullAsk, loaded: number): Step {
	if (doubtLoaded(stop, loaded)) return answer({ do: 'loaded', loaded });
	return { step: 'page', page: { page: 'released', loaded } };
}

/** After the stroke: the dial once the tube has sprung back, for whoever reads it. */
export function releasedPage(state: SessionState, ask: PullAsk, loaded: number): PageView {
	return {
		title: `Pull ${ask.pull}, released`,
		prompt: {
			label: 'Dial after release, the tube still snug',
			...numberField('angle', state.job, (released) => answer({ do: 'loaded', loaded, released })),
			plus: { label: 'not read', step: answer({ do: 'loaded', loaded }) },
			back: BACK,
			empty: 'Write what the dial reads after release and press Enter, or press + to go on without it.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: [[span('Held under load: '), span(dial(loaded), 'strong'), span(' (not saved yet)', 'alert')]],
			},
			{ rank: 0, lines: wrapped('Let the pressure off. What does the dial read now?', room.columns) },
		],
	};
}

function sections(state: SessionState, ask: PullAsk, room: Room): Section[] {
	const { set, job } = state;
	const stop: BigNumber = { label: 'STOP, dial', value: trimmed(ask.stop, 2), below: 'held under load', chief: true };
	const placed = set === null ? [] : [markNumber(set, job, false), turnNumber(set)];
	return [
		{ rank: 0, lines: bigNumbers([...placed, stop], room.columns, room.ink) },
		{ rank: 0, lines: expectation(ask, room.columns) },
		{ rank: 1, lines: limits(ask, room.columns) },
		{ rank: 2, lines: wrapped(ask.why, room.columns, 'quiet') },
	];
}

function expectation(ask: PullAsk, columns: number): Line[] {
	const drawing = ask.target === ask.design ? '' : ` (drawing ${angle(ask.design)})`;
	const angles = [
		span('comes out at '),
		span(plusMinus(angle(ask.expect.angle), ask.expect.sd), 'strong'),
		span(` of ${angle(ask.target)}${drawing}`),
	];
	const risk = span(`risk of too far ${percent(ask.risk)}`);
	const together = [...angles, span('   '), risk];
	return widthOf(together) <= columns ? [together] : [angles, [risk]];
}

function limits(ask: PullAsk, columns: number): Line[] {
	const lead =
		ask.lead === null ? [] : wrapped(`Ease up from ${dial(ask.lead)}; do not pass the stop.`, columns, 'alert');
	if (!ask.limit) return lead;
	return [...lead, ...wrapped('This is the largest angle that the machine reaches.', columns, 'alert')];
}
