import { join } from 'node:path';
import { alone, Busy } from '../files/alone.ts';
import { exists, FOR_OWNER, makeFolder } from '../files/disk.ts';
import { causeOf, codeOf } from '../files/error-codes.ts';
import { type FsPort, realFs } from '../files/fs-port.ts';
import { replaceFile } from '../files/whole-file.ts';
import type { Broken, FileFault, SettingsProblem } from './facts.ts';
import { NO_SETTINGS, readSettings } from './read-settings.ts';
import { SettingsError } from './settings-error.ts';
import type { SettingsFile } from './settings-file.ts';
import { SETTINGS_NAME, settingsStore } from './store.ts';
import { withinBounds } from './within-bounds.ts';

/** What was read, and what the user should know about it. */
export interface Loaded {
	settings: SettingsFile;
	problems: SettingsProblem[];
}

const placesIn = (home: string) => ({
	file: join(home, `${SETTINGS_NAME}.json`),
	good: join(home, `${SETTINGS_NAME}.json.good`),
});

/** The text of a file; null when there is none. */
function textOf(path: string, fs: FsPort): string | null {
	try {
		return fs.readFileSync(path).toString('utf8');
	} catch (error) {
		if (codeOf(error) === 'ENOENT') return null;
		throw error;
	}
}

/**
 * Reads settings.json. A broken file is put aside under a name ending in `.bad` and the last good copy takes its place; a file that
 * cannot be read at all is left alone. Each is said in `problems`; nothing is thrown, so that a tube can be bent without settings.
 */
export function loadSettings(home: string, fs: FsPort = realFs): Loaded {
	const { file } = placesIn(home);
	let text: string | null;
	try {
		text = textOf(file, fs);
	} catch (error) {
		return { settings: NO_SETTINGS, problems: [{ code: 'settings-unreadable', file, cause: causeOf(error) }] };
	}
	if (text === null) return fromCopy(home, null, fs);
	const read = readSettings(text);
	return 'broken' in read ? fromCopy(home, putAside(file, read.broken, fs), fs) : withinBounds(read.settings);
}

/** Renames a broken file out of the way, over none put aside before. */
function putAside(file: string, why: Broken, fs: FsPort): FileFault {
	let aside = `${file}.bad`;
	try {
		for (let n = 2; exists(fs, aside); n++) aside = `${file}.bad-${n}`;
		fs.renameSync(file, aside);
		return { why, aside };
	} catch (error) {
		return { why, cause: causeOf(error) };
	}
}

type CopyState = Extract<SettingsProblem, { code: 'settings-copy' }>['copy'];

/** The last good copy, put back in the file's place; without a copy, nothing kept. `befell`: what became of the file; null: it is not there. */
function fromCopy(home: string, befell: FileFault | null, fs: FsPort): Loaded {
	const { file, good } = placesIn(home);
	const fault = befell ?? 'missing';
	const problem = (copy: CopyState): SettingsProblem => ({ code: 'settings-copy', file, fault, good, copy });
	try {
		const text = textOf(good, fs);
		const read = text === null ? null : readSettings(text);
		if (read === null) return { settings: NO_SETTINGS, problems: befell === null ? [] : [problem('none')] };
		if ('broken' in read) return { settings: NO_SETTINGS, problems: [problem('broken')] };
		if (text !== null && !exists(fs, file)) replaceFile(fs, file, Buffer.from(text), FOR_OWNER);
		const { settings, problems } = withinBounds(read.settings);
		return { settings, problems: [problem('used'), ...problems] };
	} catch (error) {
		return { settings: NO_SETTINGS, problems: [problem(causeOf(error))] };
	}
}

/**
 * Makes a change to the settings as they are now, one program after another, and renews the last good copy. Gives them as they became, and
 * what the user should know.
 * @throws SettingsError when the file was not written; the settings are then as they were
 */
export async function changeSettings(
	home: string,
	made: (now: SettingsFile) => SettingsFile,
	fs: FsPort = realFs,
): Promise<Loaded> {
	const { file } = placesIn(home);
	try {
		// Whoever makes it: a home is for its owner alone.
		makeFolder(fs, home);
		const kept = await settingsStore(home, fs);
		return alone(fs, file, () => {
			const now = loadSettings(home, fs);
			const settings = made(now.settings);
			keepCopy(home, fs);
			kept.store = settings;
			return { settings, problems: [...now.problems, ...renewCopy(home, fs)] };
		});
	} catch (error) {
		if (error instanceof Busy) {
			throw new SettingsError({ code: 'settings-busy', file, lock: error.lock });
		}
		if (codeOf(error) === '') throw error;
		throw new SettingsError({ code: 'settings-not-written', file, cause: causeOf(error) });
	}
}

/** A file written by hand has no copy yet: without one there would be nothing to go back to. */
function keepCopy(home: string, fs: FsPort): void {
	const { file, good } = placesIn(home);
	const text = exists(fs, good) ? null : textOf(file, fs);
	if (text !== null) replaceFile(fs, good, Buffer.from(text), FOR_OWNER);
}

function renewCopy(home: string, fs: FsPort): SettingsProblem[] {
	const { file, good } = placesIn(home);
	try {
		replaceFile(fs, good, fs.readFileSync(file), FOR_OWNER);
		return [];
	} catch (error) {
		return [{ code: 'settings-copy-old', good, cause: causeOf(error) }];
	}
}
