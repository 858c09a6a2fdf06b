import { beginning, type Start } from '../session/log/start.ts';
import type { Lesson } from '../springback/history.ts';
import type { JobFile, Surroundings } from './surroundings.ts';

/** What a new session starts from, its first record: with `learn` from what `lessons` taught, else from mechanics alone. */
export function newStart(
	{ program }: Surroundings,
	id: string,
	now: Date,
	file: JobFile,
	learn: boolean,
	lessons: readonly Lesson[],
): Start {
	return {
		id,
		program,
		at: now.toISOString(),
		job: file.job,
		jobFile: file.path,
		jobSource: file.raw,
		learn,
		...beginning(file, learn ? lessons : null),
	};
}
