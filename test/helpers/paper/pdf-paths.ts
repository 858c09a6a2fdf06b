import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

type Place = readonly [number, number];

/** A line that was drawn on a page, in points from the page's top left: its corners, curves in short pieces. */
export interface DrawnLine {
	places: Place[];
	/** Width of the pen in points, and its dashes. */
	width: number;
	dash: number[];
}

type Matrix = readonly [number, number, number, number, number, number];

/** Pieces that a curve is read back in. */
const PIECES = 64;

/** All lines that are stroked on each page, as another library than the one that wrote them reads them; clipping is not looked at. */
export async function readPaths(bytes: Uint8Array): Promise<DrawnLine[][]> {
	const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
	try {
		const document = await task.promise;
		const pages: DrawnLine[][] = [];
		for (let number = 1; number <= document.numPages; number++) {
			const page = await document.getPage(number);
			const { height } = page.getViewport({ scale: 1 });
			const { fnArray, argsArray } = await page.getOperatorList();
			pages.push(linesOf(fnArray, argsArray, height));
		}
		return pages;
	} finally {
		await task.destroy();
	}
}

function linesOf(operators: readonly number[], args: readonly unknown[][], height: number): DrawnLine[] {
	let state = { at: [1, 0, 0, 1, 0, 0] as Matrix, width: 1, dash: [] as number[] };
	const kept: (typeof state)[] = [];
	const lines: DrawnLine[] = [];
	for (const [i, operator] of operators.entries()) {
		const given = args[i]!;
		if (operator === OPS.save) kept.push(state);
		else if (operator === OPS.restore) state = kept.pop() ?? state;
		else if (operator === OPS.transform) state = { ...state, at: within(state.at, given as unknown as Matrix) };
		else if (operator === OPS.setLineWidth) state = { ...state, width: given[0] as number };
		else if (operator === OPS.setDash) state = { ...state, dash: given[0] as number[] };
		else if (operator === OPS.constructPath && given[0] === OPS.stroke) {
			const { at, width, dash } = state;
			const down = ([x, y]: Place): Place => [at[0] * x + at[2] * y + at[4], height - (at[1] * x + at[3] * y + at[5])];
			const drawn = figures(Object.values((given[1] as [Record<string, number> | null])[0] ?? {}));
			lines.push(...drawn.map((places) => ({ places: places.map(down), width, dash })));
		}
	}
	return lines;
}

const within = (a: Matrix, b: Matrix): Matrix => [
	a[0] * b[0] + a[2] * b[1],
	a[1] * b[0] + a[3] * b[1],
	a[0] * b[2] + a[2] * b[3],
	a[1] * b[2] + a[3] * b[3],
	a[0] * b[4] + a[2] * b[5] + a[4],
	a[1] * b[4] + a[3] * b[5] + a[5],
];

/** The library's own list of a path: 0 to move, 1 a line, 2 a cubic curve, 4 back to the start. */
function figures(list: readonly number[]): Place[][] {
	const all: Place[][] = [];
	const next = (i: number): Place => [list[i]!, list[i + 1]!];
	for (let i = 0; i < list.length; ) {
		const figure = all.at(-1);
		switch (list[i]) {
			case 0:
				all.push([next(i + 1)]);
				i += 3;
				break;
			case 1:
				figure!.push(next(i + 1));
				i += 3;
				break;
			case 2:
				figure!.push(...curve(figure!.at(-1)!, next(i + 1), next(i + 3), next(i + 5)));
				i += 7;
				break;
			case 4:
				figure!.push(figure![0]!);
				i += 1;
				break;
			default:
				throw new RangeError(`A path has the step ${list[i]}, which is not read here.`);
		}
	}
	return all;
}

function curve(a: Place, b: Place, c: Place, d: Place): Place[] {
	return Array.from({ length: PIECES }, (_, i): Place => {
		const t = (i + 1) / PIECES;
		const u = 1 - t;
		const mix = (k: 0 | 1) => u ** 3 * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t ** 3 * d[k];
		return [mix(0), mix(1)];
	});
}
