import { answers } from './answers.ts';
import type { Subject } from './subject.ts';

/** All that reads what comes from outside. */
// biome-ignore lint/suspicious/noExplicitAny: each has cases of its own.
export const SUBJECTS: readonly Subject<any>[] = [answers];
