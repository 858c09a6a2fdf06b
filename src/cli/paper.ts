import { basename, join } from 'node:path';
import type { Paper } from '../paper/page-size.ts';
import type { PartName } from '../paper/parts.ts';
import { firstStops } from '../session/plan/first-stops.ts';
import type { BentAs, Units } from '../tube/job.ts';
import { finishedShape } from '../tube/resolve.ts';
import { marksFor } from '../words/growth.ts';
import { localMinute } from '../words/local-time.ts';
import { printedWords } from '../words/sheet.ts';
import { PDF } from '../words/usage/paper.ts';
import { type Io, tellOn } from './io.ts';
import { laidOut } from './laid-out.ts';
import { pageIn } from './pdf-page.ts';
import { besideJob, savedUnderFree, writePdf } from './save-pdf.ts';
import { UsageError } from './usage-error.ts';
import { wallClock } from './wall-clock.ts';

/** Where a PDF goes and how large its sheets are. */
export interface OnPaper {
	/** As given; null: as goes with the job's unit. */
	page: string | null;
	/** As given: a file, or `-` for standard output; null: beside the job. */
	out: string | null;
	/** Write over what is there. */
	force: boolean;
}

export interface PaperRequest extends OnPaper {
	file: string;
	/** As given: names of parts with commas between; null: the shop sheet. */
	parts: string | null;
	home: string;
	as: BentAs;
}

/**
 * `pullbook paper JOB`: pages of a job as one PDF, and on standard error where it lies. Exit code 0.
 * @throws JobFileError with every fault of the file; UsageError for a part or a sheet that there is not, or a file in the way; PdfNotSaved
 */
export async function runPaper(request: PaperRequest, io: Pick<Io, 'stdout' | 'stderr'>): Promise<number> {
	const { PART_NAMES } = await import('../paper/index.ts');
	const parts = partsIn(request.parts, PART_NAMES);
	const { path, bytes } = await jobPdf({ ...request, parts }, tellOn(io));
	writePdf({ to: request.out ?? besideJob(path, parts.join('-')), bytes, force: request.force }, io);
	return 0;
}

/**
 * Writes the shop sheet as the screen does: beside the job, or in a folder, under the first name that is free. Gives that name.
 * @throws JobFileError with every fault of the file; PdfNotSaved
 */
export async function saveSheet(file: string, folder: string | null, home: string): Promise<string> {
	const asked = { file, page: null, home, as: { mirror: false, from: 'start' } } as const;
	// That some sessions are not read yet is said where a tube is laid out or begun.
	const { path, bytes } = await jobPdf({ ...asked, parts: ['sheet'] }, () => {});
	const beside = besideJob(path, 'sheet');
	return savedUnderFree(folder === null ? beside : join(folder, basename(beside)), bytes);
}

/** Pages of a job as they were asked for, and the real path of its file. */
async function jobPdf(
	{ parts, page, ...request }: Omit<PaperRequest, 'parts' | 'out' | 'force'> & { parts: readonly PartName[] },
	tell: (sentence: string) => void,
): Promise<{ path: string; bytes: Uint8Array }> {
	const { job, path, begin, growth, document, kept, changed } = await laidOut({ ...request, learn: true }, tell, true);
	const shape = finishedShape(job, growth);
	const { printJob } = await import('../paper/index.ts');
	const said = [kept, marksFor(growth, job.tooling.die), changed].filter((line) => line !== null);
	const foot = printedWords(localMinute(new Date().toISOString(), wallClock), path);
	const of = { job, document, shape, ...firstStops(job, shape, begin), said, foot };
	return { path, bytes: await printJob(parts, of, await paperFor(page, job.units)) };
}

/** The sheet asked for, or that goes with the unit. @throws UsageError for one that there is not */
export async function paperFor(given: string | null, units: Units): Promise<Paper> {
	const { PAPERS, usualPaper } = await import('../paper/index.ts');
	return PAPERS[pageIn(given, Object.keys(PAPERS)) ?? usualPaper(units)];
}

function partsIn(given: string | null, names: readonly PartName[]): PartName[] {
	const wanted = given === null ? ['sheet'] : given.split(',').map((word) => word.trim());
	for (const word of wanted) if (!names.some((name) => name === word)) throw new UsageError(PDF.part(word, names));
	return names.filter((name) => wanted.includes(name));
}
