import { SessionCache } from '../journal/kept-sessions.ts';
import type { Stick } from '../maths/packing.ts';
import { cutList } from '../tube/cut-list.ts';
import { convertLength } from '../units/units.ts';
import { CUT_MORE, leftToCut, missingWords, tooLongWords } from '../words/cut-list.ts';
import { CUT_USAGE } from '../words/usage/cut.ts';
import { byTube, jobFiles, jobPieces, type TubeJobs } from './cut-jobs.ts';
import type { TubeCutList } from './cut-rows.ts';
import { readKerf, readStick } from './cut-sticks.ts';
import { cutText } from './cut-text.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { lessonsFor } from './lessons-for.ts';
import { pageIn } from './pdf-page.ts';
import { announcesLongRead, tellProblems } from './reading-logs.ts';
import { writePdf } from './save-pdf.ts';
import { UsageError } from './usage-error.ts';

export interface CutRequest {
	files: readonly string[];
	/** As given: lengths, with a number of sticks or without. */
	stock: readonly string[];
	kerf: string | null;
	/** The sticks are as they lie now: nothing that was cut comes off them. */
	asNow: boolean;
	form: 'text' | 'json' | 'csv';
	/** A PDF in place of that; null: none. */
	pdf: PdfRequest | null;
	home: string;
}

/** Where a list goes as a PDF: a file or `-`; its sheet as given; over what is there or not. */
export interface PdfRequest {
	out: string;
	page: string | null;
	force: boolean;
}

/**
 * `pullbook cut`: which pieces of these jobs to saw from which sticks. What kept sessions finished goes off the list. Exit code 0; 1 where
 * sticks are missing.
 * @throws JobFileError with every fault of a file; UsageError where a piece is longer than every stick, a length is none, or a file is in the way of a PDF; PdfNotSaved
 */
export async function runCut(request: CutRequest, io: Io): Promise<number> {
	const tell = tellOn(io);
	const { rows } = new SessionCache(request.home).read(announcesLongRead(tell));
	tellProblems(rows, tell);
	const lessons = lessonsFor(request.home, rows);
	const groups = byTube(jobPieces(jobFiles(request.files), { home: request.home, rows, lessons }));
	const isCounted = request.stock.some((word) => Number.isFinite(readStick(word, groups[0]!.units).count));
	if (groups.length > 1 && isCounted) throw new UsageError(CUT_USAGE.severalTubes(groups.map(({ tube }) => tube)));
	const lists = groups.map((group) => listOf(group, request));
	if (request.pdf !== null) await savePages(lists, request.pdf, io);
	else if (request.form === 'json') printJson(io, (await import('./cut-rows.ts')).cutDocument(lists));
	else if (request.form === 'csv') io.stdout.write((await import('./cut-rows.ts')).cutCsv(lists));
	else print(io, lists.map(({ group, list, kerf }) => cutText(group, list, kerf)).join('\n\n'));
	const missing = lists.flatMap(({ group, list }) => (list && missingWords(list, group.pieces[0]!.job)) ?? []);
	for (const sentence of missing) tell(sentence);
	return missing.length > 0 ? EXIT.failure : 0;
}

async function savePages(lists: readonly TubeCutList[], { out, page, force }: PdfRequest, io: Io): Promise<void> {
	const { PAPERS, usualPaper, printCutList } = await import('../paper/index.ts');
	const paper = PAPERS[pageIn(page, Object.keys(PAPERS)) ?? usualPaper(lists[0]!.group.units)];
	const of = lists.map(({ group, list, kerf }) => ({ ...group, list, kerf }));
	const files = [...new Set(lists.flatMap(({ group }) => group.pieces.map(({ file }) => file)))];
	const bytes = await printCutList({ lists: of, paper, foot: files.join(', ') });
	writePdf({ to: out, bytes, force }, io);
}

function listOf(group: TubeJobs, { stock, kerf: saw, asNow }: CutRequest): TubeCutList {
	const kerf = readKerf(saw, group.units);
	const sticks = stock.length > 0 ? stock.map((word) => readStick(word, group.units)) : sticksOfJobs(group);
	if (leftToCut(group.pieces) === 0) return { group, list: null, kerf };
	if (sticks.length === 0) throw new UsageError(CUT_USAGE.noStock(group.tube));
	const list = cutList(group.pieces, sticks, { kerf, asNow });
	if (!('why' in list)) return { group, list, kerf };
	if (list.why === 'cut-more') throw new UsageError(CUT_MORE);
	const piece = group.pieces[list.piece]!;
	throw new UsageError(tooLongWords(piece, piece.job.name, list.longest, group));
}

/** Sticks as the jobs name them: as many as it takes. */
function sticksOfJobs({ pieces, units }: TubeJobs): Stick[] {
	const lengths = pieces.flatMap(({ job }) =>
		job.tube.stock === null ? [] : [convertLength(job.tube.stock, job.units, units)],
	);
	return [...new Set(lengths)].map((length) => ({ length, count: Number.POSITIVE_INFINITY }));
}
