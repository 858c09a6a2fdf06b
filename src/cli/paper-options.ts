import type { CommandSpec, OptionSpec } from './command.ts';
import { BENT_AS_OPTIONS } from './hand-and-end.ts';

export const PAPER_OPTIONS: Readonly<Record<string, OptionSpec>> = {
	out: { value: 'FILE', says: 'write it there; - sends it to standard output' },
	parts: { value: 'PARTS', says: 'what to print: sheet, profile, wraps, copes (commas between)' },
	page: { value: 'SIZE', says: 'letter or a4; else as goes with inches or mm' },
	force: { says: 'write over a file that is there' },
	...BENT_AS_OPTIONS,
};

export const PAPER_EXAMPLES: CommandSpec['examples'] = [
	['pullbook paper jobs/bow-rail.json', 'write jobs/bow-rail-sheet.pdf'],
	['pullbook paper jobs/bow-rail.json --page a4', 'the same on A4'],
	['pullbook paper jobs/bow-rail.json --parts profile,wraps', 'full-size profile and wrap strips'],
	['pullbook paper last', 'record of the newest session'],
	['pullbook paper jobs/bow-rail.json --out -', 'to standard output, for a printer'],
];

export const PAPER_NOTES: readonly string[] = [
	'Print at full size: 100 %, not "fit to page".',
	'Exit code 5: the disk did not take the file. Nothing was left half written.',
];
