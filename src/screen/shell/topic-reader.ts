import { foldedAt } from '../../terminal/folded.ts';
import { topicTitle } from '../../words/screen/frame.ts';
import type { TopicName } from '../../words/topics/topic-names.ts';
import type { ReaderState } from './reader-state.ts';

/** Those for whoever sits at the screen. */
export const TOPICS_HERE: readonly TopicName[] = ['keys', 'display', 'files', 'other-end', 'learning', 'method'];

/** A topic of help to be read, so many columns wide. Few look them up: they are loaded when they are wanted. */
export async function topicReader(name: TopicName, columns: number): Promise<ReaderState> {
	const [{ TOPICS }, { topicLines }] = await Promise.all([
		import('../../words/topics/index.ts'),
		import('../../words/topics/topic-lines.ts'),
	]);
	return { title: topicTitle(name), lines: topicLines(TOPICS[name], columns, foldedAt), top: 0 };
}
