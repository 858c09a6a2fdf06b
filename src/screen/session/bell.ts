import type { ClockAndBell } from '../shell/clock-and-bell.ts';
import type { SessionState } from './session-state.ts';
import { isDoubt, shownAt } from './typed-ahead.ts';

/** Whether the bell rings as a session goes from one state to the next: for a doubt, for numbers that changed, for an error. */
export function rings(before: SessionState | null, after: SessionState): boolean {
	if (!after.display.bell) return false;
	const doubted = isDoubt(after) && (before === null || before.ask !== after.ask || !isDoubt(before));
	const changed = after.page.page === 'corrected' && before?.page !== after.page;
	const { message } = after;
	const wrong = message !== null && message.kind !== 'said' && message !== before?.message;
	return doubted || changed || wrong;
}

/** The state as it comes onto the screen: a doubt that comes up is to be read before a key answers it, and the bell tells of it. */
export function heard(before: SessionState | null, after: SessionState, world: ClockAndBell): SessionState {
	const session = shownAt(before, after, world.now());
	if (rings(before, session)) world.ring();
	return session;
}
