import { folded, foldedAt } from '../review/folded.ts';
import type { Row, Section, Topic } from '../words/topics/topic.ts';

/** A topic of help as lines of at most `width` cells. */
export function topicLines({ examples, sections }: Topic, width: number): string[] {
	return ['Examples', ...rowLines(examples, width), ...sections.flatMap((section) => sectionLines(section, width))];
}

function sectionLines({ heading, text = [], shown = [], rows = [] }: Section, width: number): string[] {
	return [
		'',
		heading,
		...text.flatMap((paragraph) => foldedAt(`  ${paragraph}`, width, 2)),
		...shown.flatMap((line) => folded(`  ${line}`, width)),
		...rowLines(rows, width),
	];
}

/** The widest left column that leaves the right one room. */
const WIDEST_LEFT = 30;

function rowLines(rows: readonly Row[], width: number): string[] {
	const most = Math.min(WIDEST_LEFT, Math.floor(width / 2));
	const left = Math.max(0, ...rows.map(([name]) => name.length).filter((length) => length <= most));
	const column = left + 4;
	return rows.flatMap(([name, says]) => {
		const beside = name.length <= left;
		const head = beside ? [] : [`  ${name}`];
		return [...head, ...foldedAt(`  ${(beside ? name : '').padEnd(left)}  ${says}`, width, column)];
	});
}
