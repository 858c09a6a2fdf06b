import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

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
	return { width, height, texts, text, fonts: await fontsOf(page) };
}

async function fontsOf(page: PDFPageProxy): Promise<PdfPage['fonts']> {
	const { fontNames } = await fontNamesOf(page);
	return fontNames.map((name) => {
		const font = page.commonObjs.get(name) as { name: string; missingFile?: boolean };
		return { name: font.name, embedded: font.missingFile === false };
	});
}

/** Fonts are read with what is drawn. */
async function fontNamesOf(page: PDFPageProxy): Promise<{ fontNames: string[] }> {
	const { fnArray, argsArray } = await page.getOperatorList();
	const names = fnArray.flatMap((operator, at) => (operator === SET_FONT ? [String(argsArray[at][0])] : []));
	return { fontNames: [...new Set(names)] };
}

/** `OPS.setFont` of the library. */
const SET_FONT = 37;
