import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A text on a page where it was set; points from the top left of the page, `y` its base line. */
export interface PdfText {
	text: string;
	x: number;
	y: number;
	width: number;
	/** Of the letters. */
	size: number;
}

export interface PdfPage {
	width: number;
	height: number;
	texts: PdfText[];
	/** All of it in the order in which it was set, line by line. */
	text: string;
	fonts: { name: string; embedded: boolean }[];
	/** What is drawn besides texts. */
	paths: PdfPath[];
}

/** The bounds of a path on the page, in points from the top left; the width of its line not counted. */
export interface PdfPath {
	left: number;
	top: number;
	right: number;
	bottom: number;
}

/** A PDF read back with another library than the one that wrote it. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
	const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
	try {
		const document = await task.promise;
		const pages: PdfPage[] = [];
		for (let number = 1; number <= document.numPages; number++)
			pages.push(await readPage(await document.getPage(number)));
		return pages;
	} finally {
		await task.destroy();
	}
}

async function readPage(page: PDFPageProxy): Promise<PdfPage> {
	const { width, height } = page.getViewport({ scale: 1 });
	const { items } = await page.getTextContent({ disableNormalization: true });
	const texts = items.flatMap((item): PdfText[] => {
		if (!('str' in item) || item.str === '') return [];
		const [, , , size, x, y] = item.transform as number[];
		return [{ text: item.str, x: x!, y: height - y!, width: item.width, size: size! }];
	});
	const text = items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join('');
	const operators = await page.getOperatorList();
	return { width, height, texts, text, fonts: fontsOf(page, operators), paths: pathsOf(operators, height) };
}

type Operators = Awaited<ReturnType<PDFPageProxy['getOperatorList']>>;

function fontsOf(page: PDFPageProxy, { fnArray, argsArray }: Operators): PdfPage['fonts'] {
	const names = fnArray.flatMap((operator, at) => (operator === OPS.setFont ? [String(argsArray[at][0])] : []));
	return [...new Set(names)].map((name) => {
		const font = page.commonObjs.get(name) as { name: string; missingFile?: boolean };
		return { name: font.name, embedded: font.missingFile === false };
	});
}

type Matrix = readonly number[];

/** `b` after `a`, as the PDF reference has them: [a b c d e f]. */
const times = (a: Matrix, b: Matrix): Matrix => [
	a[0]! * b[0]! + a[2]! * b[1]!,
	a[1]! * b[0]! + a[3]! * b[1]!,
	a[0]! * b[2]! + a[2]! * b[3]!,
	a[1]! * b[2]! + a[3]! * b[3]!,
	a[0]! * b[4]! + a[2]! * b[5]! + a[4]!,
	a[1]! * b[4]! + a[3]! * b[5]! + a[5]!,
];

function pathsOf({ fnArray, argsArray }: Operators, height: number): PdfPath[] {
	const paths: PdfPath[] = [];
	const kept: Matrix[] = [];
	let now: Matrix = [1, 0, 0, 1, 0, 0];
	fnArray.forEach((operator, at) => {
		if (operator === OPS.save) kept.push(now);
		else if (operator === OPS.restore) now = kept.pop()!;
		else if (operator === OPS.transform) now = times(now, argsArray[at]);
		else if (operator === OPS.constructPath) {
			const [painted, , bounds] = argsArray[at] as [number, unknown, Float32Array | null];
			// A clipping path draws nothing.
			if (bounds !== null && painted !== OPS.endPath) paths.push(boundsOf([...bounds], now, height));
		}
	});
	return paths;
}

function boundsOf([x1, y1, x2, y2]: number[], [a, b, c, d, e, f]: Matrix, height: number): PdfPath {
	const corners = [x1!, x2!].flatMap((x) =>
		[y1!, y2!].map((y) => [a! * x + c! * y + e!, b! * x + d! * y + f!] as const),
	);
	const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => height - y)];
	return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
