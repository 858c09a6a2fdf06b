import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { wholeManualWords } from '../words/usage/command-line.ts';
import { CUT_USAGE } from '../words/usage/cut.ts';
import { LOG_USAGE } from '../words/usage/log.ts';
import { PDF } from '../words/usage/paper.ts';
import { noHomeScreenWords, noJobFolderWords, noSessionScreenWords } from '../words/usage/screen.ts';
import type { Run } from './command.ts';
import { bentAsIn } from './hand-and-end.ts';
import { whyNoScreen } from './io.ts';
import { type JobFolder, listedJobs } from './job-folder.ts';
import { logRequest } from './log-options.ts';
import { optionWord } from './quantity.ts';
import { UsageError } from './usage-error.ts';

const homeRun: Run = async ({ line: { operands, options }, samples, home }, io) => {
	const [given] = operands;
	if (given !== undefined && !existsSync(given)) throw new UsageError(noJobFolderWords(given));
	const jobs: JobFolder = { own: given ?? 'jobs', samples };
	const why = whyNoScreen(io);
	if (why !== null) {
		const folder = listedJobs(jobs).folder;
		throw new UsageError(noHomeScreenWords(why, join(folder, 'JOB.json')));
	}
	// The screen itself heeds NO_COLOR and plain terminals.
	const color = options['no-color'] !== true;
	return (await import('./home.ts')).runHome({ home: home(), jobs, color, ascii: options.ascii === true });
};

const bendRun: Run = async ({ line, home }, io) => {
	const { operands, options } = line;
	const as = bentAsIn(line);
	const [file] = operands as [string];
	const lines = options.lines === true;
	const why = lines ? null : whyNoScreen(io);
	if (why !== null) {
		throw new UsageError(noSessionScreenWords(why, file));
	}
	const color = options['no-color'] !== true;
	const learn = options['no-learn'] !== true;
	const ascii = options.ascii === true;
	const rescue = typeof options.rescue === 'string' ? options.rescue : null;
	const request = { file, resume: options.resume ?? null, rescue, learn, home: home(), color, ascii, as };
	if (lines) return (await import('./bend.ts')).runBend(request, io);
	return (await import('./home.ts')).runBendScreen(request, io);
};

const practiceRun: Run = async ({ line, home }, io) => {
	const { operands, options } = line;
	const [file] = operands as [string];
	const request = {
		file,
		auto: options.auto === true,
		json: options.json === true,
		seed: typeof options.seed === 'string' ? options.seed : null,
		home: home(),
		color: options['no-color'] !== true,
		ascii: options.ascii === true,
		as: bentAsIn(line),
	};
	return (await import('./practice.ts')).runPractice(request, io);
};

const layoutRun: Run = async ({ line, home }, io) => {
	const { operands, options } = line;
	const [file] = operands as [string];
	const as = bentAsIn(line);
	const learn = options['no-learn'] !== true;
	const request = { file, json: options.json === true, chalk: options.chalk === true, home: home(), as, learn };
	return (await import('./layout.ts')).runLayout(request, io);
};

const checkRun: Run = async ({ line: { operands, options }, home }, io) =>
	(await import('./check.ts')).runCheck({ files: operands, json: options.json === true, home: home() }, io);

const cutRun: Run = async ({ line: { operands, options, repeated }, home }, io) => {
	if (options.json === true && options.csv === true) throw new UsageError(CUT_USAGE.twoForms);
	const form = options.json === true ? 'json' : options.csv === true ? 'csv' : 'text';
	const out = optionWord(options, 'out');
	if (out !== null && form !== 'text') throw new UsageError(CUT_USAGE.pdf(form));
	const pdf = out === null ? null : { out, page: optionWord(options, 'page'), force: options.force === true };
	const asked = {
		files: operands,
		stock: repeated?.stock ?? [],
		kerf: optionWord(options, 'kerf'),
		asNow: options.now === true,
	};
	return (await import('./cut.ts')).runCut({ ...asked, form, pdf, home: home() }, io);
};

/** A job file is told by its ending or by being there; any other word names a session. */
const paperRun: Run = async ({ line, home }, io) => {
	const { operands, options } = line;
	const [of] = operands as [string];
	const asked = { page: optionWord(options, 'page'), out: optionWord(options, 'out'), force: options.force === true };
	const as = bentAsIn(line);
	if (/\.json$/i.test(of) || existsSync(of))
		return (await import('./paper.ts')).runPaper(
			{ file: of, parts: optionWord(options, 'parts'), ...asked, home: home(), as },
			io,
		);
	const ofJob = ['parts', 'mirror', 'from'].filter((name) => options[name] !== undefined);
	if (ofJob[0] !== undefined) throw new UsageError(PDF.ofAJob(ofJob[0], of));
	return (await import('./paper-record.ts')).runRecord({ id: of, ...asked, home: home() }, io);
};

const logRun: Run = async ({ line, home }, io) => {
	const request = logRequest(line);
	const { id, other = null, json, csv, trend, rescue } = request;
	const { isNotebookWord, runNotebook } = await import('./notebook.ts');
	if (trend === undefined && isNotebookWord(id)) {
		if (csv) throw new UsageError(LOG_USAGE.noCsv(id));
		if (rescue !== null) throw new UsageError(LOG_USAGE.noRescue(id));
		return runNotebook(id, other, { home: home(), json }, io);
	}
	return (await import('./log.ts')).runLog({ ...request, home: home() }, io);
};

const benderRun: Run = async ({ line: { operands, options }, home }, io) => {
	const [name = null] = operands;
	return (await import('./bender.ts')).runBender({ name, json: options.json === true, home: home(), options }, io);
};

const completionRun: Run = async ({ line: { operands }, home }, io) => {
	const [shell = '', ...words] = operands;
	return (await import('./completion/run.ts')).runCompletion(shell, words, home(), io);
};

const helpRun: Run = async ({ line: { operands, options }, help: about }, io) => {
	const [topic = null] = operands;
	if (options.man !== true) return about(topic);
	if (topic !== null) throw new UsageError(wholeManualWords(topic));
	io.stdout.write((await import('./man.ts')).manPage());
	return 0;
};

const schemaRun: Run = async ({ line: { operands } }, io) => (await import('./schema.ts')).runSchema(operands[0]!, io);

/** What each command does, by its name; `home` is what the program does without one. */
export const RUNS = {
	home: homeRun,
	bend: bendRun,
	practice: practiceRun,
	layout: layoutRun,
	check: checkRun,
	cut: cutRun,
	paper: paperRun,
	log: logRun,
	bender: benderRun,
	completion: completionRun,
	help: helpRun,
	schema: schemaRun,
};
