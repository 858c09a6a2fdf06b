import type { TestResult } from '../fit/test-piece.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { SessionCache } from '../journal/kept-sessions.ts';
import { wrongValue } from '../settings/field-value.ts';
import { type FieldChanges, openSettings, type Settings } from '../settings/settings.ts';
import type { Forgotten } from '../settings/settings-file.ts';
import type { Units } from '../tube/job.ts';
import { nameWillDo } from '../tube/names.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { foreign } from '../words/foreign.ts';
import { settingsWords } from '../words/settings.ts';
import { BENDER_DONE, BENDER_USAGE, PIECE_USAGE } from '../words/usage/bender.ts';
import { type BenderPage, benderText, forgottenText } from './bender-text.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { learnedFrom } from './learned.ts';
import { type Options, optionName, optionWord, readQuantity } from './quantity.ts';
import { announcesLongRead, keptForStart } from './reading-logs.ts';
import { isTest, testPiece } from './test-piece-options.ts';
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
	rows: readonly KeptRow[];
}

type Changes = FieldChanges['fields'];

/** A word in place of a value: the field is forgotten. */
const TO_FORGET = 'none';

/**
 * `pullbook bender`: lists the benders and dies that are set up and what was learned with them, or one of them; adds, changes and
 * removes by options; reads a test piece; forgets what was learned, or takes that back. What was done goes to standard output, what was
 * wrong with the kept file to standard error. Exit code 0.
 * @throws UsageError for options that cannot be followed, SettingsError when the disk refuses
 */
export async function runBender(
	{ name, json, home, options }: BenderRequest,
	io: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const settings = openSettings(home);
	const tell = tellOn(io);
	const acts = wantsAction(options);
	if (name === null && acts) throw new UsageError(BENDER_USAGE.name);
	const { rows } = new SessionCache(home).read(announcesLongRead(tell));
	const done: BenderDone =
		name !== null && acts
			? await act({ settings, bender: name, ...dieAndUnits(settings, name, options), options, rows })
			: { lines: [] };
	for (const problem of settings.problems) tell(settingsWords(problem));
	const page = benderPage(settings, rows, name);
	if (name !== null && !acts && isEmpty(page)) throw notSetUp(settings, name);
	if (json) printJson(io, { ...documentOf(page), testPiece: done.testPiece });
	else print(io, [...done.lines, ...benderText(page)].map((line) => foreign(line)).join('\n'));
	return 0;
}

/** Benders, dies and what was learned with them, line by line; what was wrong with the kept file first. */
export function benderLines(home: string, kept: SessionCache = new SessionCache(home)): string[] {
	const settings = openSettings(home);
	const said: string[] = [];
	const rows = keptForStart(home, (sentence) => said.push(sentence), kept);
	return [...settings.problems.map(settingsWords), ...said, ...benderText(benderPage(settings, rows, null))];
}

/** `name`: the one bender that it is about; null: all. */
function benderPage(settings: Settings, rows: readonly KeptRow[], name: string | null): BenderPage {
	const { learned, leftOut } = learnedFrom(rows, settings);
	const isOn = (bender: string) => name === null || bender === name;
	return {
		benders: settings.benders().filter((entry) => isOn(entry.name)),
		learned: learned.filter(({ kin }) => isOn(kin.bender)),
		forgotten: settings.forgotten().filter(({ bender }) => isOn(bender)),
		leftOut,
		isOne: name !== null,
	};
}

function isEmpty({ benders, learned, forgotten }: BenderPage): boolean {
	return benders.length + learned.length + forgotten.length === 0;
}

function documentOf({ benders, learned, forgotten }: BenderPage) {
	return {
		benders,
		learned: learned.map(({ kin, taught, from, springback, scatter, wrong }) => {
			const { bender, die, material, od, wall, clr } = kin;
			return { bender, die, material, units: 'mm', od, wall, clr, ...taught, from, springback, scatter, wrong };
		}),
		forgotten,
	};
}

function wantsAction(options: Options): boolean {
	const fields = FIELD_NAMES.some((field) => options[optionName(field)] !== undefined);
	return (
		fields ||
		isTest(options) ||
		['die', 'units', 'remove', 'forget', 'remember'].some((name) => options[name] !== undefined)
	);
}

function dieAndUnits(settings: Settings, bender: string, options: Options): Pick<Subject, 'die' | 'units'> {
	const die = optionWord(options, 'die');
	checkName('NAME', bender);
	if (die !== null) checkName('--die', die);
	const known = settings.bender(bender);
	const record = die === null ? known?.machine : known?.dies.find((entry) => entry.name === die);
	const units = optionWord(options, 'units') ?? record?.units ?? known?.machine?.units ?? 'in';
	if (units !== 'in' && units !== 'mm') throw new UsageError(BENDER_USAGE.units(units));
	return { die, units };
}

/** What was done, in words, and what a test piece told. */
interface BenderDone {
	lines: string[];
	testPiece?: TestResult;
}

function checkName(place: string, name: string): void {
	if (!nameWillDo(name)) throw new UsageError(BENDER_USAGE.noName(place, name));
}

/** Does what the options ask for. */
async function act(subject: Subject): Promise<BenderDone> {
	const { settings, bender, die, units, options } = subject;
	if (options.remove === true) return { lines: await remove(subject) };
	if (options.forget === true) return { lines: await forget(subject) };
	if (options.remember === true) return { lines: await remember(subject) };
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

async function test({ settings, bender, die, units, options }: Subject, fields: Changes): Promise<BenderDone> {
	if (die === null) throw new UsageError(PIECE_USAGE.noDie);
	const kept = settings.tooling(bender, die, units);
	const clr = fields.clr ?? kept?.clr ?? null;
	const { lines, told, result } = testPiece({ options, units, clr, stretch: fields.stretch ?? kept?.stretch ?? 0 });
	if (options.keep !== true) return { lines: [...lines, BENDER_DONE.notKept], testPiece: result };
	await settings.setDie(bender, die, { units, fields: { ...fields, ...told } });
	return { lines, testPiece: result };
}

/** These change what is counted or kept as a whole; anything to be set in the same run would leave in doubt which comes first. */
function refuseMore(option: 'remove' | 'forget' | 'remember', options: Options): void {
	const may = ['die', 'home', 'json', 'ascii', 'no-color', 'debug', option];
	if (Object.keys(options).some((name) => !may.includes(name))) throw new UsageError(BENDER_USAGE.alone(option));
}

async function forget({ settings, bender, die, options, rows }: Subject): Promise<string[]> {
	refuseMore('forget', options);
	const known = benderPage(settings, rows, bender);
	if (isEmpty(known)) throw notSetUp(settings, bender);
	const entry: Forgotten = { bender, die, before: new Date().toISOString() };
	await settings.forget(entry);
	const [what, how] = forgottenText(entry, learnedFrom(rows, settings).leftOut);
	return [BENDER_DONE.forgotten(bender, what), how, ''];
}

/** Of what else of this bender a forgetting can be taken back. */
function nothingForgotten({ settings, bender, die }: Subject): UsageError {
	const of = settings.forgotten().filter((entry) => entry.bender === bender);
	const dies = [...new Set(of.flatMap((entry) => entry.die ?? []))];
	const whole = of.some((entry) => entry.die === null);
	return new UsageError(BENDER_USAGE.nothingForgotten(bender, die, dies, whole));
}

async function remember(subject: Subject): Promise<string[]> {
	const { settings, bender, die, options } = subject;
	refuseMore('remember', options);
	const entry = await settings.remember(bender, die);
	if (entry === null) throw nothingForgotten(subject);
	const still = settings.forgotten().some((other) => other.bender === bender && (other.die ?? die) === die);
	return [BENDER_DONE.remembered(bender, die, still), ''];
}

async function remove({ settings, bender, die, options }: Subject): Promise<string[]> {
	refuseMore('remove', options);
	if (die === null) {
		if (!(await settings.removeBender(bender))) throw notSetUp(settings, bender);
		return [BENDER_DONE.removed(bender)];
	}
	if (!(await settings.removeDie(bender, die))) {
		const dies = settings.bender(bender)?.dies.map(({ name }) => name) ?? [];
		throw new UsageError(BENDER_USAGE.noDie(bender, die, dies));
	}
	return [BENDER_DONE.dieRemoved(bender, die)];
}

function notSetUp(settings: Settings, bender: string): UsageError {
	const setUp = settings.benders().map(({ name }) => name);
	return new UsageError(BENDER_USAGE.noBender(bender, setUp));
}

/** The fields that the options set, or forget with `none`. */
function changesFrom(options: Options, units: Units): Changes {
	const changes: Changes = {};
	for (const field of FIELD_NAMES) {
		const word = optionWord(options, optionName(field));
		if (word === null) continue;
		const value = word === TO_FORGET ? null : readQuantity(optionName(field), word, TOOLING_FIELDS[field].kind, units);
		const right = value === null ? null : wrongValue(field, value, units);
		if (right !== null) throw new UsageError(BENDER_USAGE.noFigure(optionName(field), word, right));
		changes[field] = value;
	}
	return changes;
}
