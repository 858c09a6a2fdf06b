import { table } from '../terminal/table.ts';
import { type AlikeSticks, alikeSticks, type CutList, type SawnStick, toCut } from '../tube/cut-list.ts';
import {
	nothingWords,
	PIECE_HEADS,
	pieceLetter,
	sawingWords,
	stickWords,
	sumWords,
	tubeHeading,
	weightWords,
} from '../words/cut-list.ts';
import { foreignName } from '../words/foreign.ts';
import { tapeValue } from '../words/lengths.ts';
import type { TubeJobs } from './cut-jobs.ts';
import { pageLines } from './page-lines.ts';

/** The list of one tube as a page for the saw; `list` is null where nothing is left to cut. */
export function cutText(group: TubeJobs, list: CutList | null, kerf: number): string {
	const { tube, units, pieces } = group;
	const by = pieces[0]!.job;
	const rows = pieces.map((piece, i) => [
		pieceLetter(i),
		foreignName(piece.job.name),
		tapeValue(piece.length, by),
		...[piece.wanted, piece.finished, piece.begun, piece.scrapped, toCut(piece)].map(String),
	]);
	return [
		...pageLines(tubeHeading(tube, units)),
		...shownColumns([PIECE_HEADS, ...rows]),
		'',
		...(list === null
			? pageLines(nothingWords(pieces))
			: [
					...pageLines(sawingWords(kerf, by)),
					'',
					...alike(list.sticks).flatMap(({ stick, lead }) => pageLines(stickWords(stick, by), lead)),
					'',
					...pageLines(sumWords(list, by)),
					...pageLines(weightWords(tube, list, units)),
				]),
	].join('\n');
}

/** The table without the columns of what has not happened to any piece. */
function shownColumns(rows: readonly (readonly string[])[]): string[] {
	const isShown = (_: string, column: number) =>
		column < 4 || column === rows[0]!.length - 1 || rows.slice(1).some((row) => row[column] !== '0');
	return table(
		rows.map((row) => row.filter(isShown)),
		[0, 1],
	);
}

/** Sticks that are cut alike told once, with their numbers in front. */
function alike(sticks: readonly SawnStick[]): { stick: SawnStick; lead: string }[] {
	const groups = alikeSticks(sticks);
	const numbers = ({ first, last }: AlikeSticks) => (first === last ? `${first}` : `${first}-${last}`);
	const width = Math.max(...groups.map((group) => numbers(group).length));
	return groups.map((group) => ({ stick: group.stick, lead: `  ${numbers(group).padStart(width)}  ` }));
}
