import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { codeOf } from '../../files/error-codes.ts';
import { logPlaces } from '../../journal/catalogue.ts';
import { SessionCache } from '../../journal/kept-sessions.ts';
import { openSettings } from '../../settings/settings.ts';
import { localMinute } from '../../words/local-time.ts';
import { TOPIC_NAMES } from '../../words/topics/topic-names.ts';
import { CANDIDATE } from '../../words/usage/completion.ts';
import { glancedRows } from '../job-rows.ts';
import { wallClock } from '../wall-clock.ts';
import type { Candidate, KnownNames } from './candidates.ts';

/** What the home and the folder that one is in know. A key is pressed and somebody waits: no log is folded for it. */
export function knownAt(home: string): KnownNames {
	return {
		sessions: (open) => sessionsIn(home, open),
		benders: () => bendersIn(home).map((value) => ({ value, says: CANDIDATE.bender })),
		dies: (bender) => dieNamesIn(home, bender).map((value) => ({ value, says: CANDIDATE.die })),
		jobs: jobsFor,
		folders: (typed) => entriesFor(typed).folders.map((value) => ({ value, says: CANDIDATE.folder })),
		topics: () => Object.entries(TOPIC_NAMES).map(([value, says]) => ({ value, says })),
	};
}

function sessionsIn(home: string, open: boolean): Candidate[] {
	const { rows } = new SessionCache(home).read(() => false);
	const byId = new Map(rows.map((row) => [row.id, row]));
	return logPlaces(home).flatMap(({ id }) => {
		const row = byId.get(id);
		if (row === undefined) return [{ value: id, says: CANDIDATE.session }];
		if (open && row.status !== 'open') return [];
		return [{ value: id, says: CANDIDATE.kept(row.job?.name ?? null, row.status, localMinute(row.at, wallClock)) }];
	});
}

/** Those that are set up, and those that sessions were bent on. */
function bendersIn(home: string): string[] {
	const set = openSettings(home)
		.benders()
		.map(({ name }) => name);
	const bent = keptRowsIn(home).flatMap(({ kin }) => (kin === null ? [] : [kin.bender]));
	return [...new Set([...set, ...bent])].sort();
}

function dieNamesIn(home: string, bender: string | null): string[] {
	const benders = openSettings(home).benders();
	const set = benders.flatMap(({ name, dies }) =>
		bender === null || name === bender ? dies.map((die) => die.name) : [],
	);
	const bent = keptRowsIn(home).flatMap(({ kin }) => {
		return kin === null || (bender !== null && kin.bender !== bender) ? [] : [kin.die];
	});
	return [...new Set([...set, ...bent])].sort();
}

const keptRowsIn = (home: string) => new SessionCache(home).read(() => false).rows;

/** The folder that what is typed leads to, as it is typed; '' here. */
const leading = (typed: string) => typed.slice(0, typed.lastIndexOf('/') + 1);

function entriesFor(typed: string): { files: string[]; folders: string[] } {
	const lead = leading(typed);
	try {
		const entries = readdirSync(lead === '' ? '.' : lead, { withFileTypes: true });
		// What begins with a dot is asked for by typing it.
		const shown = entries.filter(({ name }) => !name.startsWith('.') || typed.slice(lead.length).startsWith('.'));
		return {
			files: shown.filter((entry) => !entry.isDirectory()).map(({ name }) => `${lead}${name}`),
			folders: shown.filter((entry) => entry.isDirectory()).map(({ name }) => `${lead}${name}/`),
		};
	} catch (error) {
		// What is typed may lead nowhere yet.
		if (codeOf(error) === '') throw error;
		return { files: [], folders: [] };
	}
}

const JOBS = 'jobs/';

/** Job files of the folder that is typed; of the folder `jobs` here without waiting for its name. */
function jobsFor(typed: string): Candidate[] {
	const { folders } = entriesFor(typed);
	const inJobs = leading(typed) === '' && folders.includes(JOBS);
	const others = folders.filter((folder) => !(inJobs && folder === JOBS));
	return [
		...jobsIn(leading(typed)),
		...(inJobs ? jobsIn(JOBS) : []),
		...others.map((value) => ({ value, says: CANDIDATE.folder })),
	];
}

function jobsIn(lead: string): Candidate[] {
	try {
		return glancedRows({ folder: lead === '' ? '.' : dirname(join(lead, '_')), samples: false }, []).map((row) => {
			const file = row.path.slice(row.path.lastIndexOf('/') + 1);
			return {
				value: `${lead}${file}`,
				says: row.summary === '' ? CANDIDATE.noJob : CANDIDATE.job(row.name, row.summary),
			};
		});
	} catch (error) {
		if (codeOf(error) === '') throw error;
		return [];
	}
}
