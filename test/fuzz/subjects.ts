import { answers } from './answers.ts';
import { jobFiles } from './job-files.ts';
import { keys } from './keys.ts';
import { logs } from './logs.ts';
import { settings } from './settings.ts';
import type { Subject } from './subject.ts';

/** All that reads what comes from outside. */
// biome-ignore lint/suspicious/noExplicitAny: each has cases of its own.
export const SUBJECTS: readonly Subject<any>[] = [jobFiles, answers, keys, logs, settings];
