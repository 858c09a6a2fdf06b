import type { JobJson } from './draft.ts';

/** The keys of a job file in the order in which one is read. */
const ORDER: readonly (keyof JobJson)[] = [
	'pullbook',
	'name',
	'units',
	'tube',
	'tooling',
	'shape',
	'trim',
	'tolerance',
	'risk',
	'mayOpen',
	'quantity',
	'ends',
	'checks',
	'notes',
];

/** No object longer than this stands on one line. */
const WIDEST_LINE = 110;

/** A job file's text: what fits on one line stands there, as a person would write it. */
export function fileText(file: JobJson): string {
	const ordered = Object.fromEntries(ORDER.flatMap((key) => (file[key] === undefined ? [] : [[key, file[key]]])));
	return `${jsonWritten(ordered, '', true)}\n`;
}

function jsonWritten(value: unknown, indent: string, open = false): string {
	if (typeof value !== 'object' || value === null) return JSON.stringify(value);
	const list = Array.isArray(value);
	const deeper = `${indent}\t`;
	const parts = (inner: string) =>
		list
			? value.map((item) => jsonWritten(item, inner))
			: Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${jsonWritten(item, inner)}`);
	const [left, right] = list ? ['[', ']'] : ['{', '}'];
	const line = list ? `${left}${parts(indent).join(', ')}${right}` : `${left} ${parts(indent).join(', ')} ${right}`;
	if (!open && line.length + indent.length <= WIDEST_LINE && !line.includes('\n') && !isBendList(value)) return line;
	return `${left}\n${parts(deeper)
		.map((part) => `${deeper}${part}`)
		.join(',\n')}\n${indent}${right}`;
}

/** Bends, points and checks are read one below the other. */
function isBendList(value: object): boolean {
	const inner = Array.isArray(value) ? value : Object.values(value);
	return (
		(inner.length > 1 && inner.some((item) => Array.isArray(item) && item.some((each) => typeof each === 'object'))) ||
		(Array.isArray(value) && value.length > 1 && typeof value[0] === 'object')
	);
}

/** The file name that a part's name suggests: lower-case words joined by `-`. */
export function fileNameFor(name: string): string {
	const words = name
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.match(/[a-z0-9]+/g);
	return `${words === null ? 'job' : words.join('-').slice(0, 60)}.json`;
}
