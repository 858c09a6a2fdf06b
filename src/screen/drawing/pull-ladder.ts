import { clamp } from '../../maths/scalar.ts';
import { trimmed } from '../../units/format.ts';
import { type Line, line, span } from '../text/line.ts';
import { centeredStart } from '../text/window.ts';

/** A rung: what was done, and to which angle it led, with its spread where it is only expected. */
export interface Rung {
	words: string;
	angle: number | null;
	/** Standard deviation in degrees, for what is not made yet. */
	sd?: number;
}

/** Angles in degrees that the ladder leads to. */
export interface Aim {
	target: number;
	low: number;
	high: number;
}

const MADE = '█';
const LIKELY = '▒';
const POSSIBLE = '░';

/**
 * The pulls of a bend, a rung each, against the target and the band that its tolerance leaves: `[` lowest, `|` target, `]` highest angle
 * wanted. A block is what was made, shading what is expected (dark one standard deviation, light two). The first line has the scale.
 */
export function pullLadder(head: string, rungs: readonly Rung[], aim: Aim, columns: number): Line[] {
	const label = Math.max(head.length, ...rungs.map(({ words }) => words.length)) + 2;
	const width = columns - label;
	if (width < LEAST_WIDTH) return [line(head), ...rungs.map(({ words }) => line(words))];
	const at = scaleOf(rungs, aim, width);
	const rows = rungs.map((rung) => [span(rung.words.padEnd(label)), span(track(rung, aim, at, width), 'strong')]);
	return [[span(head.padEnd(label)), span(figures(aim, at, width), 'quiet')], ...rows];
}

const LEAST_WIDTH = 16;

/** Column of an angle: from the lowest that is shown to just over the band. */
function scaleOf(rungs: readonly Rung[], { low, high }: Aim, width: number): (angle: number) => number {
	const shown = rungs.flatMap(({ angle, sd = 0 }) => (angle === null ? [] : [angle - 2 * sd, angle + 2 * sd]));
	const band = high - low;
	const from = Math.min(low - band, ...shown);
	const to = Math.max(high + band / 2, ...shown);
	return (angle) => clamp(Math.round(((angle - from) / (to - from)) * (width - 1)), 0, width - 1);
}

function track({ angle, sd }: Rung, { target, low, high }: Aim, at: (angle: number) => number, width: number): string {
	const cells = Array<string>(width).fill('·');
	const fill = (from: number, to: number, mark: string) => {
		for (let cell = at(from); cell <= at(to); cell++) cells[cell] = mark;
	};
	if (angle !== null && sd !== undefined) {
		fill(angle - 2 * sd, angle + 2 * sd, POSSIBLE);
		fill(angle - sd, angle + sd, LIKELY);
	}
	cells[at(low)] = '[';
	cells[at(high)] = ']';
	cells[at(target)] = '|';
	if (angle !== null && sd === undefined) cells[at(angle)] = MADE;
	return cells.join('');
}

/** The band's angles over their places, as far as they do not run into one another. */
function figures({ target, low, high }: Aim, at: (angle: number) => number, width: number): string {
	const cells = Array<string>(width).fill(' ');
	const put = (angle: number) => {
		const text = trimmed(angle, 1);
		const start = centeredStart(at(angle), text, width);
		const free = cells.slice(Math.max(0, start - 1), start + text.length + 1).every((cell) => cell === ' ');
		if (free) cells.splice(start, text.length, ...text);
	};
	for (const angle of [target, low, high]) put(angle);
	return cells.join('').trimEnd();
}
