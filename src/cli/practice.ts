import { randomBytes } from 'node:crypto';
import { loadJob } from '../job/load.ts';
import { doneOf } from '../practice/closing-note.ts';
import { beginPractice, type Practice, type PracticeStep, playedOut } from '../practice/practice.ts';
import { USUAL_SHOP } from '../practice/world.ts';
import type { BentAs } from '../tube/job.ts';
import { asBent } from '../tube/turned-job.ts';
import { capital } from '../units/format.ts';
import { pieceWords } from '../words/batch.ts';
import { gaveUpWords } from '../words/practice.ts';
import { type PlayedTube, practiceDocument } from '../words/practice-document.ts';
import { PRACTICE } from '../words/practice-report.ts';
import { noPracticeScreenWords, PRACTICE_USAGE } from '../words/usage/screen.ts';
import { displayAt } from './display.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn, whyNoScreen } from './io.ts';
import { pageLines } from './page-lines.ts';
import { practiceBatch } from './practice-batch.ts';
import { practicePort } from './practice-port.ts';
import { byHandLines, endLines, practicedBatchLines, practicedLines } from './practice-text.ts';
import { keptTooling } from './tooling-lookup.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

export interface PracticeRequest {
	file: string;
	auto: boolean;
	json: boolean;
	/** As given; null: from the clock. */
	seed: string | null;
	home: string;
	color: boolean;
	/** Only ASCII on the screen. */
	ascii?: boolean;
	as: BentAs;
}

/** A guided session on a simulated bender. Resolves to the exit code: 0, also when it was left, since it cannot be resumed. */
export async function runPractice(request: PracticeRequest, io: Io): Promise<number> {
	const seed = request.seed === null ? Date.now() % MOST_SEED : seedOf(request.seed);
	if (request.json && !request.auto) {
		throw new UsageError(PRACTICE_USAGE.json);
	}
	if (request.auto) return playAuto(request, seed, io);
	const why = whyNoScreen(io);
	if (why !== null) {
		throw new UsageError(noPracticeScreenWords(why, request.file));
	}
	return playByHand(request, seed, io);
}

const MOST_SEED = 1_000_000;

function seedOf(text: string): number {
	if (/^\d{1,9}$/.test(text)) return Number(text);
	throw new UsageError(PRACTICE_USAGE.seed(text));
}

function begin({ file, home, as }: PracticeRequest, seed: number, { stderr }: Io) {
	const read = loadJob(file, keptTooling(home, tellOn({ stderr })));
	const loaded = { ...read, job: asBent(read.job, as) };
	const random = () => randomBytes(4).toString('hex');
	const about = { home, program: VERSION, now: () => new Date(), random };
	return { practice: beginPractice(loaded, USUAL_SHOP, seed, about), loaded, about };
}

function playAuto(request: PracticeRequest, seed: number, io: Io): number {
	const { practice, loaded, about } = begin(request, seed, io);
	const batch = practiceBatch(practice, loaded, about);
	const { job } = practice.session.state.start;
	const say = (lines: readonly string[]) => {
		if (!request.json) print(io, lines.join('\n'));
	};
	say([PRACTICE.auto(job.name, seed), ...pageLines(PRACTICE.about)]);
	const played: PlayedTube[] = [];
	for (;;) {
		const { session } = batch.now();
		played.push(playTube(batch.now(), say));
		const come = batch.come(session);
		const goesOn = come?.next?.do === 'begin' && played.length < MOST_TUBES * job.quantity;
		if (come !== null && !goesOn) say(practicedBatchLines(come));
		if (!goesOn) break;
		batch.next();
	}
	if (request.json) printJson(io, practiceDocument(seed, job, played));
	return 0;
}

/** Scrapped pieces are bent anew; where so many tubes a piece were taken, the rest stays unmade. */
const MOST_TUBES = 3;

/** One tube from its first ask to its last, told as it goes. */
function playTube(practice: Practice, say: (lines: readonly string[]) => void): PlayedTube {
	const { session, station } = practice;
	const { job, piece } = session.state.start;
	const steps: PracticeStep[] = [];
	try {
		if (piece !== undefined) say(['', capital(pieceWords({ number: piece, wanted: job.quantity }))]);
		for (const step of playedOut(practice, gaveUpWords)) {
			steps.push(step);
			say(practicedLines(step, job));
		}
	} finally {
		session.close();
	}
	const { trueAngles } = station;
	const done = doneOf(steps);
	if (done !== null) say([...endLines(done, trueAngles, job), PRACTICE.log(session.logPath)]);
	return { steps, trueAngles: [...trueAngles], ...(piece !== undefined && { piece }) };
}

/** The person answers on the screen; what the simulated instruments show stands there too. */
async function playByHand(request: PracticeRequest, seed: number, io: Io): Promise<number> {
	const { practice, loaded, about } = begin(request, seed, io);
	const port = practicePort(practice, loaded, about);
	print(io, PRACTICE.byHand(seed, practice.session.logPath));
	const { openScreen } = await import('../screen/shell/open-screen.tsx');
	const code = await openScreen({
		port,
		jobPath: request.file,
		display: displayAt(request.home),
		noColor: !request.color,
		ascii: request.ascii === true,
	});
	print(io, byHandLines(port.now()).join('\n'));
	// Left to be resumed, which a simulated bender cannot.
	return code === EXIT.left ? 0 : code;
}
