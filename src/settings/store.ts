import { dirname } from 'node:path';
import type { Options } from 'conf';
import { FOR_OWNER, makeFolder } from '../files/disk.ts';
import type { FsPort } from '../files/fs-port.ts';
import { replaceFile } from '../files/whole-file.ts';
import type { SettingsFile } from './settings-file.ts';

/** The file's name, less `.json`. */
export const SETTINGS_NAME = 'settings';

/** conf as it runs: its types hide the two places in which it touches the disk. */
interface OpenConf {
	readonly path: string;
	store: SettingsFile;
	_ensureDirectory(): void;
	_write(value: SettingsFile): void;
}

const serialize = (settings: unknown) => JSON.stringify(settings, undefined, '\t');

/**
 * conf's store of the settings in a home; what is assigned to `store` is on the disk then. It writes through the port: by itself conf takes
 * a short write for a whole one, and could not be tried with a disk that fails. Loading conf takes longer than a mark table: only for a change.
 */
export async function settingsStore(home: string, fs: FsPort): Promise<{ store: SettingsFile }> {
	const { default: Conf } = await import('conf');
	const Open = Conf as unknown as new (options: Options<Record<string, unknown>>) => OpenConf;
	class Store extends Open {
		override _ensureDirectory(): void {
			makeFolder(fs, dirname(this.path));
		}
		override _write(value: SettingsFile): void {
			replaceFile(fs, this.path, Buffer.from(serialize(value)), FOR_OWNER);
		}
	}
	return new Store({
		cwd: home,
		configName: SETTINGS_NAME,
		accessPropertiesByDotNotation: false,
		clearInvalidConfig: true,
	});
}
