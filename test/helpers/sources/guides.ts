import { readFileSync, writeFileSync } from 'node:fs';

/**
 * The guides: what they show is made by the program. To write them anew after a change that is wanted:
 * `PULLBOOK_GUIDES=write npx vitest run --config .ci/vitest.config.ts test/cli/guides.test.ts`, then read what `git diff` shows.
 */
export const WRITING = process.env.PULLBOOK_GUIDES === 'write';

const fileOf = (name: string) => new URL(`../../../${name}`, import.meta.url);

export function guide(name: string): string {
	return readFileSync(fileOf(name), 'utf8');
}

/** What stands between the fences of each block of a guide. */
export function blocksOf(text: string): string[] {
	return [...text.matchAll(/^```\w*\n([\s\S]*?)^```$/gm)].map(([, block]) => block!);
}

/** The block under `<!-- MARK -->`. */
export function blockUnder(name: string, mark: string): string {
	const text = guide(name);
	return text.slice(...placeUnder(text, mark));
}

export function writeUnder(name: string, mark: string, shown: string): void {
	const text = guide(name);
	const [start, end] = placeUnder(text, mark);
	writeFileSync(fileOf(name), `${text.slice(0, start)}${shown}${text.slice(end)}`);
}

function placeUnder(text: string, mark: string): [start: number, end: number] {
	const head = `<!-- ${mark} -->\n\`\`\`\n`;
	const at = text.indexOf(head);
	const end = text.indexOf('```\n', at + head.length);
	if (at < 0 || end < 0) throw new Error(`A guide has no block under ${head}`);
	return [at + head.length, end];
}

/** One thing to do or to see in a step. */
export type Deed = { press: string } | { see: string };

/** The numbered steps of a guide: bold is what is seen, code is what is pressed, in the order in which they stand. */
export function stepsOf(text: string): Deed[][] {
	const steps = text.split(/^(?=\d+\. )/m).filter((part) => /^\d+\. /.test(part));
	return steps.map((step) => {
		const [item = ''] = step.split(/\n(?! )/);
		return [...item.matchAll(/\*\*([^*]+)\*\*|`([^`]+)`/g)].map(([, see, press]): Deed => {
			return see === undefined ? { press: press! } : { see };
		});
	});
}
