import type { Answered } from '../../session/log/answered.ts';
import type { SessionState } from './session-state.ts';

/** A release passed over so many times in a row is no longer asked for in this session. */
const OFTEN = 2;

/** Whether the dial after release is asked for after the next pull. */
export function asksRelease({ release, history }: Pick<SessionState, 'release' | 'history'>): boolean {
	if (release !== null) return release;
	const last = history.filter(isPullAsk).slice(-OFTEN);
	return last.length < OFTEN || last.some(({ readings }) => readings.some(({ of }) => of === 'released'));
}

/** A pull whose dial was asked for both times: a doubted one was answered before its release. */
function isPullAsk({ void: gone, events }: Answered): boolean {
	return !gone && events.some((event) => event.type === 'reading-taken' && event.reading.of === 'loaded');
}
