import type { MisreadFact } from './facts/index.ts';

/** An answer is a few dozen bytes, with a long note some thousand. */
export const LONGEST_LINE = 65_536;
/** Nothing in an answer lies deeper. */
const DEEPEST = 8;

/** A text in quotes, with the colon that makes it a key; or what opens and closes objects and lists. Of whole JSON nothing else matters here. */
const TOKEN = /("(?:[^"\\]|\\.)*")(\s*:)?|[{}[\]]/g;

/** What one line of the line mode, of so many bytes, holds; or why it cannot be an answer. Of two equal keys JSON itself drops the first without a word. */
export function readAnswerText(line: string, bytes: number): { raw: unknown } | { misread: MisreadFact } {
	if (bytes > LONGEST_LINE) return { misread: { code: 'line-too-long', most: LONGEST_LINE } };
	let raw: unknown;
	try {
		raw = JSON.parse(line);
	} catch {
		return { misread: { code: 'not-json' } };
	}
	const misread = misbuilt(line);
	return misread === null ? { raw } : { misread };
}

function misbuilt(json: string): MisreadFact | null {
	/** The keys so far of each object that is open; of a list none. */
	const open: Set<string>[] = [];
	for (const [token, text, colon] of json.matchAll(TOKEN)) {
		if (text === undefined) {
			if (token === '{' || token === '[') open.push(new Set());
			else open.pop();
			if (open.length > DEEPEST) return { code: 'nested-too-deep', most: DEEPEST };
		} else if (colon !== undefined) {
			const key = JSON.parse(text) as string;
			if (open.at(-1)?.has(key)) return { code: 'key-twice', key };
			open.at(-1)?.add(key);
		}
	}
	return null;
}
