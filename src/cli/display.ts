import type { Display, DisplayPort } from '../screen/shell/display.ts';
import { openSettings } from '../settings/settings.ts';
import { SettingsError } from '../settings/settings-error.ts';

/** What a person chooses about the screen, kept among the preferences of a home. */
export function displayAt(home: string): DisplayPort {
	const { lengths, fromStart, checklist, bell } = openSettings(home).preferences();
	let kept = displayChosen({ lengths, fromStart, checklist, bell });
	// One after the other: each change is made to the file as the one before left it.
	let writing = Promise.resolve();
	return {
		kept: () => kept,
		keep(changes) {
			kept = { ...kept, ...displayChosen(changes) };
			writing = writing.then(() => openSettings(home).setPreferences(kept)).catch(unlessRefused);
		},
	};
}

type DisplayGiven = { [key in keyof Display]?: Display[key] | undefined };
type KeptDisplay = { [key in keyof Display]?: NonNullable<Display[key]> };

/** What has been chosen, without what has not. */
function displayChosen(choices: DisplayGiven): KeptDisplay {
	return Object.fromEntries(Object.entries(choices).filter(([, value]) => value != null));
}

/** A disk that refuses a preference must not stop a session at a bender; what is wrong with the disk is said with the next reading. */
function unlessRefused(error: unknown): void {
	if (!(error instanceof SettingsError)) throw error;
}
