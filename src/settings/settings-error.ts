import type { SettingsFault, SettingsRefusal } from './facts.ts';

/** A setting could not be kept; what was kept before still is. Exit code 5: the disk refused a write. `words` tells its fact. */
export class SettingsError extends Error {
	readonly exitCode = 5;
	override name = 'SettingsError';
	readonly fact: SettingsFault;

	constructor(fact: SettingsFault) {
		super(JSON.stringify(fact));
		this.fact = fact;
	}
}

/** What was to be kept cannot be: whoever asks a person for it looks at it first. */
export class SettingRefused extends RangeError {
	override name = 'SettingRefused';
	readonly fact: SettingsRefusal;

	constructor(fact: SettingsRefusal) {
		super(JSON.stringify(fact));
		this.fact = fact;
	}
}
