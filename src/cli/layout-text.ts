import { table } from '../terminal/table.ts';
import type { Job } from '../tube/job.ts';
import type { LayoutDocument } from '../tube/layout.ts';
import { endsTable } from '../words/layout/ends.ts';
import { aboutWords, cutLengthWords } from '../words/layout/heading.ts';
import {
	bendingTable,
	checksTable,
	markingTable,
	shapeTable,
	swingTable,
	type TableWords,
} from '../words/layout/layout-tables.ts';
import { CAUTIONS, NO_WARNINGS, warningWords } from '../words/warnings.ts';
import { pageLines } from './page-lines.ts';

const tableLines = ({ heading, rows, words, notes }: TableWords): string[] => [
	'',
	...heading,
	...table(rows, words),
	...notes.flatMap((note) => pageLines(note, '  ')),
];

function cautionLines(job: Job, { warnings }: LayoutDocument): string[] {
	if (warnings.length === 0) return ['', NO_WARNINGS];
	return ['', CAUTIONS, ...warnings.flatMap((warning) => pageLines(warningWords(warning, job), '  - '))];
}

/**
 * The layout as a page for the bench, at most 80 columns wide save for long names: marking, then bending, then the rest.
 * `said`: sentences on what it rests on.
 */
export function layoutText(job: Job, document: LayoutDocument, said: readonly string[]): string {
	return [
		...aboutWords(job, said).flatMap((sentence) => pageLines(sentence)),
		'',
		...cutLengthWords(job, document).flatMap((sentence) => pageLines(sentence)),
		...tableLines(markingTable(job, document)),
		...tableLines(bendingTable(document)),
		...tableLines(shapeTable(job, document)),
		...(document.checks.length === 0 ? [] : tableLines(checksTable(job, document))),
		...tableLines(swingTable(job, document)),
		...tableLines(endsTable(document)),
		...cautionLines(job, document),
	].join('\n');
}
