import type { Reason } from '../../../src/session/protocol/facts/index.ts';
import type { Wording } from '../../../src/words/lengths.ts';
import { reasonWords } from '../../../src/words/reason.ts';
import { plainJob } from '../shop/plain-job.ts';

/** Why something is asked, advised or refused, in the words that a shell has for it: of a job in inches unless it is given. */
export function whyOf(told: { reason: readonly Reason[] } | null | undefined, style: Wording = plainJob()): string {
	return told ? reasonWords(told.reason, style) : '';
}
