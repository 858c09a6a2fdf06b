import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Where the jobs of the home screen lie. */
export interface JobFolder {
	/** New jobs are written here. It may not be there yet where there are samples. */
	own: string;
	/** Listed as long as it is not. */
	samples: string | null;
}

export interface ListedJobs {
	folder: string;
	/** They belong to the program: they are bent and copied, never changed. */
	samples: boolean;
}

/** The folder whose jobs are listed now: the first job that is written makes one's own. */
export function listedJobs({ own, samples }: JobFolder): ListedJobs {
	return samples === null || existsSync(own) ? { folder: own, samples: false } : { folder: samples, samples: true };
}

/** The job files of a folder, by name. */
export function jobFilesIn(folder: string): string[] {
	return readdirSync(folder)
		.filter((name) => name.endsWith('.json'))
		.sort()
		.map((name) => join(folder, name));
}
