import type { LayoutDocument } from '../../tube/layout.ts';
import type { Hindrance } from '../../tube/warnings.ts';
import { trimmed } from '../../units/format.ts';
import type { TableWords } from './layout-tables.ts';

/** What keeps a tube from being begun at an end. */
const HINDRANCES: Readonly<Record<Hindrance['code'], string>> = {
	'short-clamp': 'the clamp finds too little straight',
	'short-follow': 'too little tube behind the last bend',
	'floor-contact': 'the swing meets the floor',
};
const LEFT_OVER =
	'Left over: say each bend comes out wrong by its tolerance. This much of it the bends after cannot take up, counted in tolerances of the finished tube. Less is better.';
const NO_BETTER = 'Both ends leave about the same to correct with.';
const NEITHER = 'Neither end can be bent as drawn; see the cautions.';
const BETTER = {
	start: 'Better begun at the start end of the drawing.',
	far: 'Better begun at the far end of the drawing: --from far.',
} as const;

/** Which end of the drawing to begin at. */
export function endsTable({ ends, bends }: LayoutDocument): TableWords {
	const both = ['start', 'far'] as const;
	const rows = both.map((end) => {
		const { possible, left } = ends[end];
		return [`${end} end`, possible ? 'can be bent' : 'not as drawn', trimmed(left, 1)];
	});
	const reasons = both.flatMap((end) => {
		const found = [...new Set(ends[end].hindrances.map(({ code }) => HINDRANCES[code]))];
		return found.length === 0 ? [] : [`Begun at the ${end} end: ${found.join(', ')}.`];
	});
	const better = ends.better === null ? NO_BETTER : ends[ends.better].possible ? BETTER[ends.better] : NEITHER;
	return {
		heading: ['Which end to bend first (--from start or --from far)'],
		rows: [['begun at the', 'clamp, tube behind, floor', 'left over'], ...rows],
		words: [0, 1],
		notes: [...reasons, LEFT_OVER, ...(bends.length === 1 ? [] : [better])],
	};
}
