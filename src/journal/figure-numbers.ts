/** What a session comes to in a chart, as a fixed count of numbers. */
import type { SessionFigures } from '../session/report/figures.ts';

/** How many numbers they are. */
export const FIGURE_NUMBERS = 5;

/** Puts the figures into `numbers` from place `at`; nothing told is no number. Without a session's figures its bends are none either. */
export function putFigures(figures: SessionFigures | null, numbers: Float64Array, at: number): void {
	const none = Number.NaN;
	if (figures === null) numbers.fill(none, at, at + FIGURE_NUMBERS);
	else {
		const { springback, error, miss, taken, pulls } = figures;
		numbers.set([springback ?? none, error ?? none, miss ?? none, taken, pulls], at);
	}
}

/** The figures that begin at place `at`. */
export function figuresAt(numbers: Float64Array, at: number): SessionFigures | null {
	const number = (which: number) => numbers[at + which]!;
	const told = (which: number) => (Number.isNaN(number(which)) ? null : number(which));
	if (Number.isNaN(number(3))) return null;
	return { springback: told(0), error: told(1), miss: told(2), taken: number(3), pulls: number(4) };
}
