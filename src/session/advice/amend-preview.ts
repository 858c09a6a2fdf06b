import { at } from '../../maths/list.ts';
import { ask } from '../ask.ts';
import type { State } from '../log/state.ts';
import type { Answer } from '../protocol/action.ts';
import type { Ask, Numbers } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';
import { stepped } from '../step.ts';

/** A number before and after. */
export interface Moved {
	before: number;
	after: number;
}

/** What an answer would change, found on a copy: nothing is kept. Lengths in the job's unit, angles in degrees. */
export interface AmendPreview {
	/** Why it would not be taken; null: it would be. */
	refused: Reason[] | null;
	/** It would be taken for a slip and asked again first, for this reason. */
	doubted: Reason[] | null;
	/** Made bends whose angle would be believed to be another one. */
	made: { bend: number; angle: Moved }[];
	/** Bends to come whose numbers would be others. */
	plan: { bend: number; mark: Moved; rotation: Moved; angle: Moved }[];
	/** The stop of the open pull. */
	stop: Moved | null;
	/** The question that would be open, where it is another one than now. */
	next: Ask | null;
}

/** What would come of an answer. Pure. */
export function amendPreview(answer: Answer, state: State): AmendPreview {
	const step = stepped(answer, state, { at: state.start.at });
	const nothing: AmendPreview = { refused: null, doubted: null, made: [], plan: [], stop: null, next: null };
	if ('refused' in step) return { ...nothing, refused: step.refused.reason };
	const after = step.next;
	const [open, then] = [ask(state), ask(after)];
	return {
		...nothing,
		doubted: then?.ask === 'confirm' && open?.ask !== 'confirm' ? then.reason : null,
		made: madeOtherwise(state, after),
		plan: plannedOtherwise(state, after),
		stop: stopMoved(open, then),
		next: then !== null && askKindOf(then) !== askKindOf(open) ? then : null,
	};
}

function askKindOf(open: Ask | null): string {
	return open === null ? '' : `${open.ask} ${'bend' in open ? open.bend : ''} ${'name' in open ? open.name : ''}`;
}

/** Angles nearer than this are shown alike. */
const SAME_ANGLE = 0.005;

function madeOtherwise(before: State, after: State): AmendPreview['made'] {
	return before.bends.flatMap(({ made }, i) => {
		const then = after.bends[i]?.made ?? null;
		if (made === null || then === null || Math.abs(made.angle - then.angle) < SAME_ANGLE) return [];
		return [{ bend: i + 1, angle: { before: made.angle, after: then.angle } }];
	});
}

/** Made bends are as they are: only those to come have numbers to be changed. */
function plannedOtherwise(before: State, after: State): AmendPreview['plan'] {
	const tape = before.start.job.tooling.tape;
	return before.plan.current.flatMap((numbers, i) => {
		if (before.bends[i]?.made !== null) return [];
		const then = at(after.plan.current, i);
		const moved = (of: keyof Pick<Numbers, 'fromStart' | 'rotation' | 'angle'>): Moved => ({
			before: numbers[of],
			after: then[of],
		});
		const [mark, rotation, angle] = [moved('fromStart'), moved('rotation'), moved('angle')];
		const far = ({ before: a, after: b }: Moved) => Math.abs(a - b);
		const same = far(mark) < tape / 8 && far(rotation) < SAME_ANGLE && far(angle) < SAME_ANGLE;
		return same ? [] : [{ bend: i + 1, mark, rotation, angle }];
	});
}

function stopMoved(open: Ask | null, then: Ask | null): Moved | null {
	if (open?.ask !== 'pull' || then?.ask !== 'pull' || open.bend !== then.bend || open.stop === then.stop) return null;
	return { before: open.stop, after: then.stop };
}
