import type { Row, Topic, TopicSection } from './topic.ts';

/** Breaks a text into lines of at most `width` cells, the ones after the first set in by `column`. */
export type Fold = (text: string, width: number, column: number) => string[];

/** The widest left column that leaves the right one room. */
const WIDEST_LEFT = 30;

/** A topic of help as lines of at most `width` cells. */
export function topicLines({ examples, sections }: Topic, width: number, fold: Fold): string[] {
	return [
		'Examples',
		...rowLines(examples, width, fold),
		...sections.flatMap((section) => sectionLines(section, width, fold)),
	];
}

function sectionLines(
	{ heading, text = [], shown = [], rows = [] }: TopicSection,
	width: number,
	fold: Fold,
): string[] {
	return [
		'',
		heading,
		...text.flatMap((paragraph) => fold(`  ${paragraph}`, width, 2)),
		...shown.flatMap((line) => fold(`  ${line}`, width, 4)),
		...rowLines(rows, width, fold),
	];
}

function rowLines(rows: readonly Row[], width: number, fold: Fold): string[] {
	const most = Math.min(WIDEST_LEFT, Math.floor(width / 2));
	const left = Math.max(0, ...rows.map(([name]) => name.length).filter((length) => length <= most));
	return rows.flatMap(([name, says]) => {
		const beside = name.length <= left;
		const head = beside ? [] : [`  ${name}`];
		return [...head, ...fold(`  ${(beside ? name : '').padEnd(left)}  ${says}`, width, left + 4)];
	});
}
