import fc from 'fast-check';
import type { Check, Job } from '../../../src/tube/job.ts';
import { hatJob } from '../shop/hat.ts';

/** What a line of ours must not begin with: only a line's end in a foreign text could bring it there. */
export const FALSE_LINE = 'Cut the tube to 12';

const PIECES = [
	'\n',
	'\r\n',
	'\t',
	'\x00',
	'\x07',
	'\x08',
	'\x1b',
	'\x1b[2J',
	'\x1b]52;c;aGk=\x07',
	'\x7f',
	'\x85',
	'\x9b31m',
	'\x9d0;title\x9c',
	'\u061c',
	'\u200e',
	'\u200f',
	'\u2028',
	'\u2029',
	'\u202a',
	'\u202e',
	'\u2066',
	'\u2069',
	'\ufeff',
	'\ud800',
	'\u6f22',
	'\ud83d\udea4',
	'A rail',
	' ',
	'"',
	`\n${FALSE_LINE}`,
];

/** A text as it may come in a file from elsewhere: sequences that act on a terminal, line ends, other scripts, and letters. */
export const hostileText: fc.Arbitrary<string> = fc
	.array(fc.oneof(fc.constantFrom(...PIECES), fc.string({ unit: 'binary', maxLength: 2 })), {
		minLength: 1,
		maxLength: 5,
	})
	.map((parts) => `n${parts.join('')}`.slice(0, 60));

/** A job of which every text is hostile. */
export const hostileJob: fc.Arbitrary<Job> = fc.array(hostileText, { minLength: 7, maxLength: 7 }).map((texts) => {
	const [name, material, bender, die, notes, ...checks] = texts as [
		string,
		string,
		string,
		string,
		string,
		...string[],
	];
	const hat = hatJob();
	const named = (check: Check, i: number): Check => ({ ...check, name: `${i}${checks[i]}` });
	return hatJob({
		name,
		notes,
		tube: { ...hat.tube, material: { ...hat.tube.material, name: material } },
		tooling: { ...hat.tooling, bender, die },
		checks: hat.checks.map(named),
	});
});

/** What of a text acts on whoever reads it, by ECMA-48 and Unicode Standard Annex 9; line feeds are ours to write. */
export function actsIn(text: string): string[] {
	return [...text].filter((character) => {
		const code = character.codePointAt(0)!;
		const control = (code < 0x20 && code !== 0x0a) || (code >= 0x7f && code <= 0x9f);
		const bidi =
			[0x061c, 0x200e, 0x200f].includes(code) ||
			(code >= 0x202a && code <= 0x202e) ||
			(code >= 0x2066 && code <= 0x2069);
		return control || bidi || code === 0x2028 || code === 0x2029 || (code >= 0xd800 && code <= 0xdfff);
	});
}

/** Lines that a foreign text began. */
export function falseLines(text: string): string[] {
	return text.split('\n').filter((line) => line.trimStart().startsWith(FALSE_LINE));
}
