import { display } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { files } from './files.ts';
import { keys } from './keys.ts';
import { learning } from './learning.ts';
import { lineMode } from './line-mode.ts';
import { method } from './method.ts';
import { otherEnd } from './other-end.ts';
import type { Topic } from './topic.ts';

/** The pages of help by the name that `pullbook help` takes. */
export const TOPICS: Readonly<Record<string, Topic>> = {
	keys,
	display,
	files,
	'other-end': otherEnd,
	learning,
	method,
	'line-mode': lineMode,
	'exit-codes': exitCodes,
};
