import type { CsvColumn } from '../review/csv-list.ts';
import { type CutList, toCut } from '../tube/cut-list.ts';
import { weightOf } from '../tube/weight.ts';
import { pieceLetter } from '../words/cut-list.ts';
import { csvText } from './csv.ts';
import type { TubeJobs } from './cut-jobs.ts';

/** A tube's cut list, and what it was made for; `list` is null where nothing is left to cut. */
export interface TubeCutList {
	group: TubeJobs;
	list: CutList | null;
	kerf: number;
}

/** A piece to cut: lengths unrounded, the mark from the stick's end. */
interface CutRow extends Pick<TubeJobs, 'tube' | 'units'> {
	/** Counted from 1. */
	stick: number;
	length: number;
	from: string;
	piece: string;
	job: string;
	cut: number;
	mark: number;
	left: number;
}

const CUT_COLUMNS: readonly CsvColumn<CutRow>[] = [
	['material', ({ tube }) => tube.material.name],
	['od', ({ tube }) => tube.od],
	['wall', ({ tube }) => tube.wall],
	['units', ({ units }) => units],
	['stick', ({ stick }) => stick],
	['stick_length', ({ length }) => length],
	['from', ({ from }) => from],
	['piece', ({ piece }) => piece],
	['job', ({ job }) => job],
	['cut_length', ({ cut }) => cut],
	['mark', ({ mark }) => mark],
	['left', ({ left }) => left],
];

/** A row a piece to cut. */
export function cutCsv(lists: readonly TubeCutList[]): string {
	const rows = lists.flatMap(({ group: { tube, units, pieces }, list }) =>
		(list?.sticks ?? []).flatMap(({ length, from, cuts, left }, i) =>
			cuts.map(({ piece, mark }): CutRow => {
				const { job, length: cut } = pieces[piece]!;
				const of = { tube, units, stick: i + 1, length, from };
				return { ...of, piece: pieceLetter(piece), job: job.name, cut, mark, left };
			}),
		),
	);
	return csvText(CUT_COLUMNS, rows);
}

/** The document of `--json`: lengths unrounded, in each tube's `units`; weights in lb or kg. */
export function cutDocument(lists: readonly TubeCutList[]): object {
	return { tubes: lists.map(cutTubeDocument) };
}

function cutTubeDocument({ group: { tube, units, pieces }, list, kerf }: TubeCutList): object {
	const weight = (length: number) => weightOf(tube, length, units);
	const named = pieces.map(({ job, file, ...piece }, i) => {
		const { length, wanted, finished, begun, scrapped } = piece;
		const counts = { wanted, finished, begun, scrapped, toCut: toCut(piece) };
		return { piece: pieceLetter(i), job: job.name, file, cutLength: length, ...counts, weight: weight(length) };
	});
	const sticks = (list?.sticks ?? []).map(({ cuts, ...stick }) => ({
		...stick,
		cuts: cuts.map(({ piece, mark }) => ({ piece: pieceLetter(piece), job: pieces[piece]!.job.name, mark })),
	}));
	return {
		tube: { material: tube.material.name, od: tube.od, wall: tube.wall },
		units,
		kerf,
		pieces: named,
		sticks,
		...(list && {
			used: list.used,
			inPieces: list.inPieces,
			left: list.left,
			waste: list.used - list.inPieces,
			bound: list.bound,
			proven: list.isProven,
			missing: list.sticks.filter(({ from }) => from === 'missing').length,
			weight: { unit: units === 'in' ? 'lb' : 'kg', pieces: weight(list.inPieces), sticks: weight(list.used) },
		}),
	};
}
