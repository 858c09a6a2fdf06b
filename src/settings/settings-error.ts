/** A setting could not be kept; what was kept before still is. Exit code 5: the disk refused a write. */
export class SettingsError extends Error {
	readonly exitCode = 5;
	override name = 'SettingsError';
}
