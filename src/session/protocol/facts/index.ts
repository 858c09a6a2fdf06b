/** What the core states; `words` makes sentences of it. */

import type { DecideFact } from './decide.ts';
import type { AsideFact, DoubtFact, TwiceFact } from './doubt.ts';
import type { NotSavedFact } from './not-saved.ts';
import type { PullFact } from './pull.ts';
import type { RefusalFact } from './refusal.ts';

export type { CautionFact, GeneralCaution } from './caution.ts';
export type { AgainstFact, DecideFact, Missed } from './decide.ts';
export type { AsideFact, DoubtFact, Slip, TwiceFact } from './doubt.ts';
export type { FinishFact } from './finish.ts';
export type { Known } from './known.ts';
export type { Cause, NotSavedFact, WriteFault } from './not-saved.ts';
export type { PullFact } from './pull.ts';
export type { ExcludedFact, HindranceFact, MisreadFact, NumberFault, RefusalFact, Wanted } from './refusal.ts';

/** A sentence as a log of an earlier version has it. */
export interface LoggedFact {
	code: 'as-logged';
	text: string;
}

/** Why something is asked, advised or refused. */
export type Reason =
	| PullFact
	| DoubtFact
	| AsideFact
	| TwiceFact
	| DecideFact
	| RefusalFact
	| LoggedFact
	| NotSavedFact;
