import type { ToolingLookup } from '../job/tooling.ts';
import { openSettings } from '../settings/settings.ts';
import { settingsWords } from '../words/settings.ts';

/** Looks up benders and dies as kept under `home`; `tell` is given a sentence for everything that was wrong with the kept file. */
export function keptTooling(home: string, tell: (problem: string) => void): ToolingLookup {
	const settings = openSettings(home);
	for (const problem of settings.problems) tell(settingsWords(problem));
	return (bender, die, units) => settings.tooling(bender, die, units);
}
