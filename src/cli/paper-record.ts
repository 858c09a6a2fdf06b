import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type ReadSession, readAnyway, readSession } from '../journal/catalogue.ts';
import type { RecordOnPaper } from '../paper/record/record-on-paper.ts';
import { storyOf } from '../review/story.ts';
import { following, readThrough, startIn } from '../session/log/read-back.ts';
import { journalWords } from '../words/journal.ts';
import { PDF } from '../words/usage/paper.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';
import { meantSession } from './meant-session.ts';
import { type OnPaper, paperFor } from './paper.ts';
import { besideJob, savedUnderFree, writePdf } from './save-pdf.ts';
import { VERSION } from './version.ts';
import { wallClock } from './wall-clock.ts';

/**
 * `pullbook paper ID`: the record of a session as one PDF. Exit code 0; 6 where the log is damaged: what can be read is printed all the same; 2
 * where there is nothing to print.
 * @throws UsageError where several sessions may be meant, or a file is in the way; PdfNotSaved
 */
export async function runRecord(
	{ id, home, ...asked }: OnPaper & { id: string; home: string },
	io: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const tell = tellOn(io);
	const kept = readAnyway(home, meantSession(home, id));
	if (kept.problem !== null) tell(journalWords(kept.problem));
	const { first } = kept;
	if (first === null) return kept.damage === null ? EXIT.badInput : EXIT.damaged;
	const bytes = await recordPdf(kept, asked.page);
	const to = asked.out ?? recordBesideJob(startIn(first).jobFile, kept.id);
	writePdf({ to, bytes, force: asked.force }, io);
	return kept.damage === null ? 0 : EXIT.damaged;
}

/**
 * Writes the record as the screen does: beside the job, under the first name that is free. Gives that name.
 * @throws JournalError where nothing can be read; PdfNotSaved
 */
export async function saveRecord(id: string, home: string): Promise<string> {
	const kept = readSession(home, id);
	return savedUnderFree(recordBesideJob(startIn(kept.first!).jobFile, id), await recordPdf(kept, null));
}

async function recordPdf(kept: ReadSession, page: string | null): Promise<Uint8Array> {
	const of = following(() => recordOnPaper(kept));
	const { printRecord } = await import('../paper/index.ts');
	return printRecord(of, await paperFor(page, of.view.job.units));
}

function recordOnPaper(kept: ReadSession): RecordOnPaper {
	const { path, records, problem, imported } = kept;
	const { state, view, corrections } = storyOf(readThrough(records));
	return {
		state,
		view,
		corrections,
		imported,
		log: { path, lines: records.length, sha256: linesHash(path, records.length) },
		problem: problem === null ? null : journalWords(problem),
		clock: wallClock,
		foot: PDF.recordFoot(VERSION, basename(path)),
	};
}

/** SHA-256 (FIPS 180-4) of the first lines of a file, their line ends among them. */
function linesHash(path: string, lines: number): string {
	const bytes = readFileSync(path);
	let end = 0;
	for (let line = 0; line < lines; line++) end = bytes.indexOf(0x0a, end) + 1;
	return createHash('sha256').update(bytes.subarray(0, end)).digest('hex');
}

/** `bow-rail-record-20261126-090937.pdf`, beside the job: an id begins with its day and its time. */
function recordBesideJob(jobFile: string, id: string): string {
	const [day, time] = id.split('-');
	return besideJob(jobFile, `record-${day}-${time}`);
}
