import type { FileKind, TextFound, TextPlace, TextRight, TextWanted } from '../../job/facts/index.ts';
import { asJson } from '../../tube/as-json.ts';

const FILES: Readonly<Record<FileKind, string>> = {
	absent: 'no such file',
	folder: 'a folder',
	forbidden: 'a file that may not be read',
	'through-no-folder': 'a path through something that is no folder',
	'device-or-socket': 'a device or a socket',
	pipe: 'a pipe',
	'too-large': 'more than 1 MB',
};

export const lineColumn = ({ line, column }: TextPlace): string => `line ${line}, column ${column}`;

export function textFoundWords(found: TextFound): string {
	switch (found.code) {
		case 'file':
			return FILES[found.is];
		case 'not-read':
			return found.text;
		case 'end-of-file':
			return 'the end of the file';
		case 'text':
			return asJson(found.text);
		case 'key-twice':
			return `the key ${asJson(found.key)} a second time, ${lineColumn(found)}`;
	}
}

export function textRightWords(right: TextRight): string {
	switch (right.code) {
		case 'readable-file':
			return 'the path of a job file that can be read, at most 1 MB';
		case 'key-once':
			return 'each key once';
		case 'json':
			return `${jsonWanted(right.wants)}${right.comment ? '; JSON has no comments, prose goes into "notes"' : ''}`;
	}
}

function jsonWanted(wants: TextWanted): string {
	return typeof wants === 'string' ? WANTED[wants] : `a : here, after the key ${asJson(wants.colonAfter)}`;
}

const WANTED: Readonly<Record<Extract<TextWanted, string>, string>> = {
	end: 'the end of the file here, after the closing }',
	'less-nesting': 'a job file, which is not nested so deeply',
	value: 'a value here: a number as 0.5, a text in "…", { … } or [ … ] (no comma goes before a ])',
	key: 'a key in "…" here (no comma goes before a })',
	'closed-text': 'a text that is closed with " on the same line, with \\" for a " inside and \\\\ for a \\',
	'comma-or-brace': 'a comma or } here',
	'comma-or-bracket': 'a comma or ] here',
};
