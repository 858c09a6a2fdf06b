import type { SetAsk } from '../../session/protocol/asks.ts';
import type { ChangeDie } from '../../session/protocol/facts/caution.ts';
import type { CorrectedNote, Output } from '../../session/protocol/notes.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import type { Job } from '../../tube/job.ts';
import { QUIETLY_CORRECTED } from '../../words/session/corrected.ts';

/** A hand turns a tube no finer than this, degrees. */
const TURN_SHOWS = 0.5;

/**
 * Whether a correction is a page of its own: some number of the bends left changed by more than its instrument shows. One that leaves nothing to
 * bend is one only where no closing page follows, which tells the same.
 */
export function isCorrectionNews({ remaining }: CorrectedNote, { tooling }: Job, all: readonly Output[]): boolean {
	if (remaining.length === 0) return !all.some((output) => 'note' in output && output.note === 'done');
	return remaining.some(
		({ fromStart, angle, rotation, was }) =>
			Math.abs(fromStart - was.fromStart) > tooling.tape ||
			Math.abs(angle - was.angle) > tooling.dialStep ||
			Math.abs(normalizeRotation(rotation - was.rotation)) > TURN_SHOWS,
	);
}

/** What is said, beside the next question, of a correction that is no page; null where there is none. */
export function quietWords(outputs: readonly Output[], job: Job): string | null {
	const quiet = outputs.some(
		(output) =>
			'note' in output &&
			output.note === 'corrected' &&
			output.remaining.length > 0 &&
			!isCorrectionNews(output, job, outputs),
	);
	return quiet ? QUIETLY_CORRECTED : null;
}

/** The page to be seen before a set-up for which another die goes in. */
export function dieChangesIn({ cautions }: SetAsk): { page: 'changeDie'; change: ChangeDie }[] {
	return cautions.filter((caution) => caution.code === 'change-die').map((change) => ({ page: 'changeDie', change }));
}
