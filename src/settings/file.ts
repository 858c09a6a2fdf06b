import { copyFileSync, existsSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { codeOf } from '../files/error-codes.ts';
import { realFs } from '../files/fs-port.ts';
import { replaceFile } from '../files/whole-file.ts';
import { EMPTY, readSettings, type SettingsFile } from './schema.ts';
import { SettingsError } from './settings-error.ts';
import { withinBounds } from './within-bounds.ts';

const NAME = 'settings';

/** What was read, and what the user should know about it. */
export interface Loaded {
	settings: SettingsFile;
	problems: string[];
}

const placesIn = (home: string) => ({ file: join(home, `${NAME}.json`), good: join(home, `${NAME}.json.good`) });

const nameOf = (error: unknown): string => codeOf(error) || String(error);

/** The text of a file; null when there is none. */
function textOf(path: string): string | null {
	try {
		return readFileSync(path, 'utf8');
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return null;
		throw error;
	}
}

/**
 * Reads settings.json. A broken file is put aside under a name ending in `.bad` and the last good copy takes its place; a file that
 * cannot be read at all is left alone. Each is said in `problems`; nothing is thrown, so that a tube can be bent without settings.
 */
export function loadSettings(home: string): Loaded {
	const { file } = placesIn(home);
	let text: string | null;
	try {
		text = textOf(file);
	} catch (error) {
		const problem = `${file} cannot be read (${nameOf(error)}): no bender, die or preference kept there is used.`;
		return { settings: EMPTY, problems: [problem] };
	}
	if (text === null) return fromCopy(home, null);
	const read = readSettings(text);
	return typeof read === 'string' ? fromCopy(home, putAside(file, read)) : withinBounds(read);
}

/** Renames a broken file out of the way, over none put aside before; says so. */
function putAside(file: string, fault: string): string {
	let aside = `${file}.bad`;
	for (let n = 2; existsSync(aside); n++) aside = `${file}.bad-${n}`;
	try {
		renameSync(file, aside);
		return `${file} is broken (${fault}); it was put aside as ${aside}.`;
	} catch (error) {
		return `${file} is broken (${fault}) and cannot be put aside (${nameOf(error)}).`;
	}
}

/** The last good copy, put back in the file's place; without a copy, nothing kept. `problem`: what befell the file. */
function fromCopy(home: string, problem: string | null): Loaded {
	const { file, good } = placesIn(home);
	const missing = `${file} is missing.`;
	try {
		const text = textOf(good);
		const read = text === null ? null : readSettings(text);
		if (read === null)
			return { settings: EMPTY, problems: problem === null ? [] : [`${problem} No copy of it is kept.`] };
		if (typeof read === 'string')
			return { settings: EMPTY, problems: [`${problem ?? missing} Its copy ${good} is broken too.`] };
		if (!existsSync(file)) copyFileSync(good, file);
		const { settings, problems } = withinBounds(read);
		return { settings, problems: [`${problem ?? missing} The last good copy, ${good}, is used.`, ...problems] };
	} catch (error) {
		return { settings: EMPTY, problems: [`${problem ?? missing} Its copy ${good} cannot be used (${nameOf(error)}).`] };
	}
}

const serialize = (settings: SettingsFile) => JSON.stringify(settings, undefined, '\t');

/**
 * Writes settings.json by conf and reads it back, since a nearly full disk can cut it short without an error; then renews the last
 * good copy. Gives what the user should know.
 * @throws SettingsError when the file was not written; the settings are then as they were
 */
export async function saveSettings(home: string, settings: SettingsFile): Promise<string[]> {
	const { file, good } = placesIn(home);
	const written = serialize(settings);
	try {
		keepCopyOf(file, good);
		await writeByConf(home, settings);
		if (textOf(file) === written) return renewCopy(good, written);
		restore(file, good);
	} catch (error) {
		throw new SettingsError(`${file} was not written (${nameOf(error)}). Nothing kept before is changed.`);
	}
	throw new SettingsError(`${file} was cut short: the disk may be full. The settings are as they were before.`);
}

/** Only a write needs conf: loading it takes longer than the mark table does. */
async function writeByConf(home: string, settings: SettingsFile): Promise<void> {
	const { default: Conf } = await import('conf');
	const conf = new Conf<SettingsFile>({
		cwd: home,
		configName: NAME,
		accessPropertiesByDotNotation: false,
		configFileMode: 0o600,
		serialize,
	});
	conf.store = settings;
}

/** A file written by hand has no copy yet: without one there would be nothing to go back to. */
function keepCopyOf(file: string, good: string): void {
	const text = existsSync(good) ? null : textOf(file);
	if (text !== null) replaceFile(realFs, good, Buffer.from(text), 0o600);
}

/** Undoes a write that was cut short. A rename needs no room on the disk. */
function restore(file: string, good: string): void {
	if (existsSync(good)) renameSync(good, file);
	else rmSync(file, { force: true });
}

function renewCopy(good: string, text: string): string[] {
	try {
		replaceFile(realFs, good, Buffer.from(text), 0o600);
		return [];
	} catch (error) {
		return [`The settings are kept, but their spare copy ${good} could not be renewed (${nameOf(error)}).`];
	}
}
