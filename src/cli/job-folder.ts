import { existsSync } from 'node:fs';

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
