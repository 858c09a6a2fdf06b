import { type FsPort, realFs } from '../files/fs-port.ts';
import type { Units } from '../tube/job.ts';
import { type KeptRecord, type KeptTooling, keptIn } from '../tube/kept-tooling.ts';
import { nameWillDo } from '../tube/names.ts';
import type { FieldName } from '../tube/tooling-fields.ts';
import type { SettingsProblem } from './facts.ts';
import { wrongValue } from './field-value.ts';
import { changeSettings, loadSettings } from './file.ts';
import { SettingRefused } from './settings-error.ts';
import type { BenderInFile, Forgotten, KeptDie, Preferences, SettingsFile } from './settings-file.ts';

export interface KeptBender {
	name: string;
	/** What holds with every die: where the dial ends, what it shows, the tape beside it. */
	machine: KeptRecord | null;
	dies: readonly KeptDie[];
}

/** Fields to keep, lengths in `units`, which the whole record is then kept in; null forgets one. */
export interface FieldChanges {
	units: Units;
	fields: Partial<Record<FieldName, number | null>>;
}

/**
 * Benders, dies and preferences. Reading never throws; what was wrong with the kept file stands in `problems`. A change is made to
 * the file as it then is, so that another program's change is not lost, and throws SettingsError when the disk refuses it.
 */
export interface Settings {
	/** What the user should know. */
	readonly problems: readonly SettingsProblem[];
	benders(): readonly KeptBender[];
	bender(name: string): KeptBender | undefined;
	/** What is kept for a bender and a die, lengths in `units`: the machine's fields, and over them the die's. */
	tooling(bender: string, die: string, units: Units): KeptTooling | undefined;
	preferences(): Preferences;
	/** Before which moments the lessons of a bender (`die` null: with every die) or of one die do not count, the latest last. */
	forgotten(): readonly Forgotten[];
	/** Whether a lesson counts that a session begun at this ISO time taught. */
	counts(bender: string, die: string, at: string): boolean;
	/** From now on lessons from before `before` do not count. */
	forget(forgotten: Forgotten): Promise<void>;
	/** Takes back the latest forgetting of exactly this bender and die; null when there is none. */
	remember(bender: string, die: string | null): Promise<Forgotten | null>;
	setMachine(bender: string, changes: FieldChanges): Promise<void>;
	setDie(bender: string, die: string, changes: FieldChanges): Promise<void>;
	/** False when it was not there. */
	removeDie(bender: string, die: string): Promise<boolean>;
	removeBender(bender: string): Promise<boolean>;
	setPreferences(changes: Preferences): Promise<void>;
}

export function openSettings(home: string, fs: FsPort = realFs): Settings {
	let { settings, problems } = loadSettings(home, fs);
	const change = async (made: (now: SettingsFile) => SettingsFile) => {
		const changed = await changeSettings(home, made, fs);
		settings = changed.settings;
		const told = new Set(problems.map((problem) => JSON.stringify(problem)));
		problems = [...problems, ...changed.problems.filter((problem) => !told.has(JSON.stringify(problem)))];
	};
	const bender = (name: string) => benders().find((entry) => entry.name === name);
	const benders = () => settings.benders.map(({ name, machine, dies }) => ({ name, machine: machine ?? null, dies }));
	return {
		get problems() {
			return problems;
		},
		benders,
		bender,
		tooling(name, die, units) {
			const known = bender(name);
			const records = [known?.machine, known?.dies.find((entry) => entry.name === die)].filter((r) => r != null);
			return records.length > 0 ? Object.assign({}, ...records.map((record) => keptIn(record, units))) : undefined;
		},
		preferences: () => settings.preferences,
		forgotten: () => forgottenIn(settings),
		counts: (name, die, at) =>
			forgottenIn(settings).every((entry) => !concerns(entry, name, die) || Date.parse(at) >= Date.parse(entry.before)),
		forget: (entry) => change((now) => ({ ...now, forgotten: [...(now.forgotten ?? []), { ...entry }] })),
		async remember(name, die) {
			const latest = forgottenIn(settings).findLast((entry) => entry.bender === name && entry.die === die);
			if (latest === undefined) return null;
			await change((now) => ({ ...now, forgotten: now.forgotten?.filter((entry) => !isSameForgotten(entry, latest)) }));
			return latest;
		},
		setMachine: (name, changes) =>
			change((now) =>
				withBender(now, name, (entry) => ({
					...entry,
					machine: recordWithChanges(entry.machine, changes, { of: 'bender', name }),
				})),
			),
		setDie: (name, die, changes) => change((now) => withBender(now, name, (entry) => withDie(entry, die, changes))),
		async removeDie(name, die) {
			if (!bender(name)?.dies.some((entry) => entry.name === die)) return false;
			const without = (entry: BenderInFile) => ({ ...entry, dies: entry.dies.filter((d) => d.name !== die) });
			await change((now) => withBender(now, name, without));
			return true;
		},
		async removeBender(name) {
			if (!bender(name)) return false;
			await change((now) => ({ ...now, benders: now.benders.filter((entry) => entry.name !== name) }));
			return true;
		},
		setPreferences: (changes) => change((now) => ({ ...now, preferences: { ...now.preferences, ...changes } })),
	};
}

function forgottenIn({ forgotten = [] }: SettingsFile): Forgotten[] {
	return [...forgotten].sort((a, b) => Date.parse(a.before) - Date.parse(b.before));
}

function concerns(entry: Forgotten, bender: string, die: string): boolean {
	return entry.bender === bender && (entry.die === null || entry.die === die);
}

function isSameForgotten(a: Forgotten, b: Forgotten): boolean {
	return a.bender === b.bender && a.die === b.die && a.before === b.before;
}

/** The item of that name made anew by `made`, in its place, or at the end where there was none. */
function withNamed<T extends { name: string }>(list: readonly T[], fresh: T, made: (item: T) => T): T[] {
	const known = list.some(({ name }) => name === fresh.name);
	return known ? list.map((item) => (item.name === fresh.name ? made(item) : item)) : [...list, made(fresh)];
}

function withBender(now: SettingsFile, name: string, made: (entry: BenderInFile) => BenderInFile): SettingsFile {
	return {
		...now,
		benders: withNamed<BenderInFile>(now.benders, { name: checkedName(name, 'bender'), dies: [] }, made),
	};
}

function withDie(entry: BenderInFile, die: string, changes: FieldChanges): BenderInFile {
	const fresh = { name: checkedName(die, 'die'), units: changes.units, fields: {} };
	const made = (known: KeptDie) => ({
		...known,
		...recordWithChanges(known, changes, { of: 'die', name: die }),
	});
	return { ...entry, dies: withNamed(entry.dies, fresh, made) };
}

function checkedName(name: string, of: 'bender' | 'die'): string {
	if (nameWillDo(name)) return name;
	throw new SettingRefused({ code: 'settings-no-name', of, name });
}

interface Owner {
	of: 'bender' | 'die';
	name: string;
}

/** The record with the changes in it, and in their unit. */
function recordWithChanges(known: KeptRecord | undefined, { units, fields }: FieldChanges, owner: Owner) {
	const set = Object.entries(fields) as [FieldName, number | null][];
	for (const [field, value] of set) {
		const right = value === null ? null : wrongValue(field, value, units);
		if (right !== null) throw new SettingRefused({ code: 'settings-no-value', ...owner, field, value: value!, right });
	}
	const before = known ? keptIn(known, units) : {};
	const all = Object.entries({ ...before, ...fields }).filter(([, value]) => value !== null);
	return { ...known, units, fields: Object.fromEntries(all) as Record<FieldName, number> };
}
