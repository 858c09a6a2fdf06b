/** One session copied into a folder of logs: no line twice, none written over, and a log that is the beginning of another is no second session. */
import { Busy } from '../../files/alone.ts';
import { causeOf, codeOf } from '../../files/error-codes.ts';
import { JournalError, NotSaved } from '../errors.ts';
import { type HeldLog, held, isBeginning, sharedLines } from '../merge-back.ts';
import type { Copied, Exchanged, LeftOut } from './facts.ts';
import type { Shelf } from './shelf.ts';
import type { Source } from './source.ts';

/** Another program that copies the same sessions at the same time is done with this one by then. */
const ATTEMPTS = 5;

type CopyOutcome = { copied: Copied } | { left: LeftOut } | { stopped: NonNullable<Exchanged['stopped']> };

/** What became of it; `stopped` where the disk refused, and the folder is as it was. */
export function copySession(source: Source, shelf: Shelf): CopyOutcome {
	try {
		for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
			const done = copyTried(source, shelf);
			if (done !== null) return 'code' in done ? { left: done } : { copied: done };
			shelf.look();
		}
		return { left: { code: 'busy', log: source.path } };
	} catch (error) {
		return whyNotCopied(source, error);
	}
}

function whyNotCopied(source: Source, error: unknown): CopyOutcome {
	if (error instanceof Busy) return { left: { code: 'busy', log: error.lock.replace(/\.lock$/, '') } };
	if (error instanceof NotSaved) return { stopped: { log: source.path, cause: causeOf(error.cause) } };
	if (error instanceof JournalError) return { left: error.fact };
	if (codeOf(error) === '') throw error;
	return { stopped: { log: source.path, cause: causeOf(error) } };
}

type There = HeldLog & { path: string };

/** Null where another program was faster: what is there has to be looked at again. */
function copyTried(source: Source, shelf: Shelf): Copied | LeftOut | null {
	const { id } = source;
	const logs = shelf.logsOf(id).map((path): There => ({ path, ...held(path, shelf.fs) }));
	const same = logs.find((log) => isBeginning(source, log));
	if (same) return { how: 'there', id, path: same.path };
	const damaged = logs.find(({ read }) => read.damage !== null);
	if (damaged?.read.damage) {
		return { code: 'damaged-there', log: damaged.path, line: damaged.read.damage.line, whole: source.path };
	}
	const [beginning] = logs.filter((log) => isBeginning(log, source)).sort((a, b) => b.read.size - a.read.size);
	if (beginning) return goneOnWith(beginning, source, shelf);
	return addedTo(logs, source, shelf);
}

function goneOnWith(log: There, source: Source, shelf: Shelf): Copied | LeftOut | null {
	const { path } = log;
	if (shelf.isAway(path)) return { code: 'away', log: path };
	const { id, file, read } = source;
	const isEmpty = log.read.size === 0;
	const isRight = () => {
		const now = held(path, shelf.fs);
		return now.read.size === log.read.size && now.read.damage === null && isBeginning(now, source);
	};
	if (!shelf.replace(path, file, isRight, isEmpty)) return null;
	if (isEmpty) return { how: 'added', id, path };
	return { how: 'longer', id, path, lines: read.records.length - log.read.records.length };
}

function addedTo([other]: There[], source: Source, shelf: Shelf): Copied | null {
	const { id, file } = source;
	const path = shelf.add(id, file);
	if (path === null) return null;
	if (!other) return { how: 'added', id, path };
	return { how: 'apart', id, path, other: other.path, lines: sharedLines(other, source) };
}
