import type { Size } from '../terminal/output.ts';
import { type Frame, frame } from './frame.ts';
import { bendsOf, viewOf } from './pages/index.ts';
import type { SessionState } from './session-state.ts';

/** A session's screen. */
export function sessionFrame(state: SessionState, size: Size, ink: string): Frame {
	const { title, prompt, body } = viewOf(state);
	return frame({ title, where: where(state), body, prompt, entry: state.entry, message: state.message }, size, ink);
}

function where(state: SessionState): string {
	const { ask, job } = state;
	const bend = ask !== null && 'bend' in ask ? ask.bend : undefined;
	return bend === undefined ? job.name : `${job.name} · bend ${bend} of ${bendsOf(state)}`;
}
