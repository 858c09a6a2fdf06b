import { type CutList, toCut } from '../tube/cut-list.ts';
import { weightOf } from '../tube/weight.ts';
import { pieceLetter } from '../words/cut-list.ts';
import { csvText } from './csv.ts';
import type { TubeJobs } from './cut-jobs.ts';

/** A tube's cut list, and what it was made for; `list` is null where nothing is left to cut. */
export interface TubeList {
	group: TubeJobs;
	list: CutList | null;
	kerf: number;
}

const HEADS = [
	'material',
	'od',
	'wall',
	'units',
	'stick',
	'stick_length',
	'from',
	'piece',
	'job',
	'cut_length',
	'mark',
	'left',
];

/** A row a piece to cut: lengths unrounded, the mark from the stick's end. */
export function cutCsv(lists: readonly TubeList[]): string {
	const rows = lists.flatMap(({ group: { tube, units, pieces }, list }) =>
		(list?.sticks ?? []).flatMap(({ length, from, cuts, left }, i) =>
			cuts.map(({ piece, mark }) => {
				const { job, length: cut } = pieces[piece]!;
				const stick = [tube.material.name, tube.od, tube.wall, units, i + 1, length, from];
				return [...stick, pieceLetter(piece), job.name, cut, mark, left];
			}),
		),
	);
	return csvText([HEADS, ...rows]);
}

/** The document of `--json`: lengths unrounded, in each tube's `units`; weights in lb or kg. */
export function cutDocument(lists: readonly TubeList[]): object {
	return { tubes: lists.map(tubeDocument) };
}

function tubeDocument({ group: { tube, units, pieces }, list, kerf }: TubeList): object {
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
