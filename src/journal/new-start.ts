import { beginning, type Start } from '../session/log/start.ts';
import type { Lesson } from '../springback/history.ts';
import { modelName } from '../springback/model-name.ts';
import type { NewPiece } from './pieces.ts';
import type { JobFile, Surroundings } from './surroundings.ts';

/** What a new session starts from, its first record, as that piece of its job: with `learn` from what `lessons` taught, else from mechanics alone. */
export function newStart(
	{ program }: Surroundings,
	id: string,
	now: Date,
	file: JobFile,
	learn: boolean,
	lessons: readonly Lesson[],
	{ growth, alike: _, ...piece }: NewPiece & Pick<Start, 'simulated'>,
): Start {
	return {
		id,
		program,
		at: now.toISOString(),
		job: file.job,
		jobFile: file.path,
		jobSource: file.raw,
		learn,
		...piece,
		model: modelName(),
		...beginning(file, learn ? lessons : null, growth),
	};
}
