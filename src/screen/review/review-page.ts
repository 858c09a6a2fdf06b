import type { MarkName, Narrowing, Sorting } from '../../review/session-table.ts';

/** What of the kept sessions is listed, and how. */
export interface ListAt {
	review: 'list';
	by: Narrowing;
	sort: Sorting;
	/** What was searched for when it was left. */
	search: string;
}

export const PLOTS = ['springback', 'landed', 'errors', 'pulls', 'scatter'] as const;
export type PlotName = (typeof PLOTS)[number];

/** Which page of the review is open. `top`: the first line of a page longer than the screen. */
export type ReviewPage =
	| ListAt
	/** To what the list can be narrowed; null: by what. */
	| { review: 'narrow'; by: MarkName | 'sort' | null; list: ListAt }
	| { review: 'story' }
	| { review: 'bend'; bend: number; top: number }
	| { review: 'corrections' | 'checks'; top: number }
	| { review: 'taught'; top: number }
	/** The tube turned by so many steps about the screen's upright and its level line; `enlarged`: its errors are. */
	| { review: 'tube'; across: number; over: number; enlarged: boolean }
	/** The session after that line of its log; 0: as it began. */
	| { review: 'line'; at: number }
	| { review: 'plot'; plot: PlotName }
	/** `from`: the page that asked for it. */
	| { review: 'more' | 'help'; from: ReviewPage };

export const LIST: ListAt = { review: 'list', by: {}, sort: 'newest', search: '' };
