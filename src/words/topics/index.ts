import { display } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { files } from './files.ts';
import { keys } from './keys.ts';
import { learning } from './learning.ts';
import { lineMode } from './line-mode.ts';
import { method } from './method.ts';
import { otherEnd } from './other-end.ts';
import { safety } from './safety.ts';
import { tables } from './tables.ts';
import type { Topic } from './topic.ts';
import type { TopicName } from './topic-names.ts';
import { trend } from './trend.ts';

export const TOPICS: Readonly<Record<TopicName, Topic>> = {
	keys,
	display,
	files,
	safety,
	'other-end': otherEnd,
	learning,
	trend,
	tables,
	method,
	'line-mode': lineMode,
	'exit-codes': exitCodes,
};
