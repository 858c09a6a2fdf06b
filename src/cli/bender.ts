import type { TestResult } from '../fit/test-piece.ts';
import { FIELD_NAMES, FIELDS, wrongName, wrongValue } from '../settings/fields.ts';
import { type FieldChanges, openSettings, type Settings } from '../settings/settings.ts';
import type { Units } from '../tube/job.ts';
import { benderText } from './bender-text.ts';
import type { Io } from './io.ts';
import { type Options, optionName, optionWord, readQuantity } from './quantity.ts';
import { isTest, testPiece } from './test-piece.ts';
import { UsageError } from './usage-error.ts';

export interface BenderRequest {
	/** The bender; null: all of them. */
	name: string | null;
	json: boolean;
	home: string;
	options: Options;
}

/** What one run of the command is about. */
interface Subject {
	settings: Settings;
	bender: string;
	die: string | null;
	units: Units;
	options: Options;
}

type Changes = FieldChanges['fields'];

/** A word in place of a value: the field is forgotten. */
const FORGET = 'none';

/**
 * `pullbook bender`: lists the benders and dies that are set up, or one of them; adds, changes and removes by options; and reads a
 * test piece. What was done goes to standard output, what was wrong with the kept file to standard error. Exit code 0.
 * @throws UsageError for options that cannot be followed, SettingsError when the disk refuses
 */
export async function runBender(
	{ name, json, home, options }: BenderRequest,
	io: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const settings = openSettings(home);
	const acts = wantsAction(options);
	if (name === null && acts) throw new UsageError('Name the bender that this is about: pullbook bender NAME …');
	if (name !== null && !acts && !settings.bender(name)) throw notSetUp(settings, name);
	const done: Done =
		name !== null && acts
			? await act({ settings, bender: name, ...dieAndUnits(settings, name, options), options })
			: { lines: [] };
	for (const problem of settings.problems) io.stderr.write(`pullbook: ${problem}\n`);
	const shown = name === null ? settings.benders() : settings.benders().filter((entry) => entry.name === name);
	if (json) io.stdout.write(`${JSON.stringify({ benders: shown, testPiece: done.testPiece }, null, 2)}\n`);
	else io.stdout.write([...done.lines, ...benderText(shown)].map((line) => `${line}\n`).join(''));
	return 0;
}

/** The benders and dies that are set up, line by line; what was wrong with the kept file first. */
export function benderLines(home: string): string[] {
	const settings = openSettings(home);
	return [...settings.problems, ...benderText(settings.benders())];
}

function wantsAction(options: Options): boolean {
	const fields = FIELD_NAMES.some((field) => options[optionName(field)] !== undefined);
	return fields || isTest(options) || ['die', 'units', 'remove'].some((name) => options[name] !== undefined);
}

function dieAndUnits(settings: Settings, bender: string, options: Options): Pick<Subject, 'die' | 'units'> {
	const die = optionWord(options, 'die');
	checkName('NAME', bender);
	if (die !== null) checkName('--die', die);
	const known = settings.bender(bender);
	const record = die === null ? known?.machine : known?.dies.find((entry) => entry.name === die);
	const units = optionWord(options, 'units') ?? record?.units ?? known?.machine?.units ?? 'in';
	if (units !== 'in' && units !== 'mm') throw new UsageError(`--units is in or mm, but "${units}" stands there.`);
	return { die, units };
}

/** What was done, in words, and what a test piece told. */
interface Done {
	lines: string[];
	testPiece?: TestResult;
}

function checkName(place: string, name: string): void {
	const right = wrongName(name);
	if (right !== null) throw new UsageError(`${place} cannot be ${JSON.stringify(name)}; right would be ${right}.`);
}

/** Does what the options ask for. */
async function act(subject: Subject): Promise<Done> {
	const { settings, bender, die, units, options } = subject;
	if (options.remove === true) return { lines: await remove(subject) };
	const fields = changesFrom(options, units);
	if (isTest(options)) return test(subject, fields);
	if (die === null) await settings.setMachine(bender, { units, fields });
	else if (!asksOnly(subject, fields)) await settings.setDie(bender, die, { units, fields });
	return { lines: [] };
}

/** A die that is set up, named without anything to change: it is only shown. */
function asksOnly({ settings, bender, die, options }: Subject, fields: Changes): boolean {
	const known = settings.bender(bender)?.dies.some((entry) => entry.name === die) ?? false;
	return known && options.units === undefined && Object.keys(fields).length === 0;
}

async function test({ settings, bender, die, units, options }: Subject, fields: Changes): Promise<Done> {
	if (die === null) throw new UsageError('A test piece tells of a die: name it with --die DIE.');
	const kept = settings.tooling(bender, die, units);
	const clr = fields.clr ?? kept?.clr ?? null;
	const { lines, told, result } = testPiece({ options, units, clr, stretch: fields.stretch ?? kept?.stretch ?? 0 });
	if (options.keep !== true) return { lines: [...lines, 'Nothing is kept yet; --keep keeps it.'], testPiece: result };
	await settings.setDie(bender, die, { units, fields: { ...fields, ...told } });
	return { lines, testPiece: result };
}

async function remove({ settings, bender, die, options }: Subject): Promise<string[]> {
	const more = Object.keys(options).filter((name) => FIELD_NAMES.some((field) => optionName(field) === name));
	if (more.length > 0 || isTest(options))
		throw new UsageError('--remove goes with --die alone: nothing else can be set in the same run.');
	if (die === null) {
		if (!(await settings.removeBender(bender))) throw notSetUp(settings, bender);
		return [`Bender "${bender}" and its dies are forgotten.`];
	}
	if (!(await settings.removeDie(bender, die))) {
		const dies = settings.bender(bender)?.dies.map((entry) => `"${entry.name}"`) ?? [];
		throw new UsageError(
			`Bender "${bender}" has no die "${die}". ${dies.length > 0 ? `Its dies are ${dies.join(', ')}.` : 'It has none.'}`,
		);
	}
	return [`Die "${die}" of bender "${bender}" is forgotten.`];
}

function notSetUp(settings: Settings, bender: string): UsageError {
	const names = settings.benders().map((entry) => `"${entry.name}"`);
	const there = names.length > 0 ? `Set up: ${names.join(', ')}.` : 'None is set up.';
	return new UsageError(
		`There is no bender "${bender}". ${there} To set one up: pullbook bender ${bender} --die DIE --clr LENGTH`,
	);
}

/** The fields that the options set, or forget with `none`. */
function changesFrom(options: Options, units: Units): Changes {
	const changes: Changes = {};
	for (const field of FIELD_NAMES) {
		const word = optionWord(options, optionName(field));
		if (word === null) continue;
		const value = word === FORGET ? null : readQuantity(optionName(field), word, FIELDS[field].kind, units);
		const right = value === null ? null : wrongValue(field, value);
		if (right !== null)
			throw new UsageError(`--${optionName(field)} cannot be ${word}; right would be ${right}, or none.`);
		changes[field] = value;
	}
	return changes;
}
