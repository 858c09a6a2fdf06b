import { join } from 'node:path';
import { rawJob } from '../job/load.ts';
import { makeJobFolder, saveJobFile } from '../job/save.ts';
import type { WorkshopPort } from '../screen/benders/workshop-port.ts';
import { openSettings, type Settings } from '../settings/settings.ts';
import type { Lesson } from '../springback/history.ts';
import { settingsWords } from '../words/settings.ts';
import { type JobFolder, listedJobs } from './job-folder.ts';
import { lessonsFor } from './lessons-for.ts';
import { keptForStart } from './reading-logs.ts';

/** Job files in one's own folder and benders under `home`, as the screen writes them. What is kept is read when it is first wanted, and again after a change. */
export function workshopAt(home: string, jobs: JobFolder): WorkshopPort {
	let opened: Settings | null = null;
	let lessons: readonly Lesson[] | null = null;
	const settings = () => (opened ??= openSettings(home));
	return {
		benders() {
			// Another program may have changed them since.
			opened = openSettings(home);
			lessons = null;
			return opened.benders();
		},
		lookup: (bender, die, units) => settings().tooling(bender, die, units),
		// Read once for a form. That some sessions are not read yet is said where a tube is laid out or begun.
		lessons: () =>
			(lessons ??= lessonsFor(
				home,
				keptForStart(home, () => {}),
			)),
		problems: () => settings().problems.map(settingsWords),
		async change({ bender, die, changes }) {
			if (changes === null) await (die === null ? settings().removeBender(bender) : settings().removeDie(bender, die));
			else if (die === null) await settings().setMachine(bender, changes);
			else await settings().setDie(bender, die, changes);
		},
		jobFile: rawJob,
		jobPath: (file) => join(jobs.own, file),
		saveJob(path, text, over) {
			if (listedJobs(jobs).samples) makeJobFolder(jobs.own);
			return saveJobFile(path, text, over);
		},
	};
}
