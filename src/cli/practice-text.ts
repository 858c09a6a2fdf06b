import type { Practice, PracticeStep } from '../practice/practice.ts';
import type { Batch } from '../session/batch/batch.ts';
import { standing } from '../session/outputs.ts';
import type { DoneNote, Output } from '../session/protocol/notes.ts';
import { table } from '../terminal/table.ts';
import type { Job } from '../tube/job.ts';
import { trimmed } from '../units/format.ts';
import { meanErrorWords, pullsWords, signed, walkWords } from '../words/batch.ts';
import { actionInWords, askInWords } from '../words/practice.ts';
import {
	ANGLES_HEADS,
	ANGLES_LEGEND,
	BATCH_HEADS,
	checkReadWords,
	correctedWords,
	endingWords,
	headingWords,
	LEFT_EARLY,
	NOT_MADE,
	practicedWords,
} from '../words/practice-report.ts';
import { pageLines } from './page-lines.ts';

/** One turn of the session as lines of text: what is asked, why, and the answer; before a bend's first seat its heading. */
export function practicedLines({ ask, action, outputs }: PracticeStep, job: Job): string[] {
	const { what, why } = askInWords(ask, job);
	const heading = headingWords(ask);
	return [
		...(heading === null ? [] : ['', heading]),
		...pageLines(what, '  '),
		...(why === '' ? [] : pageLines(why, '         ')),
		...pageLines(actionInWords(ask, action, job), '      -> '),
		...outputs.flatMap((output) => correctedLines(output, job)),
	];
}

function correctedLines(output: Output, job: Job): string[] {
	const said = correctedWords(output, job);
	return said === null ? [] : pageLines(said, '  ');
}

/** The end: what was aimed at, what the program believes was made, and what truly was. */
export function endLines(done: DoneNote, trueAngles: readonly number[], job: Job): string[] {
	const rows: string[][] = [[...ANGLES_HEADS]];
	for (const [i, { design, target, made, sd, pulls, seats }] of done.bends.entries()) {
		const believed = made === null ? ['-', ''] : [trimmed(made, 1), trimmed(Math.max(0.1, sd ?? 0), 1)];
		const truly = trueAngles[i];
		const numbers = [design, target].map((angle) => trimmed(angle, 1));
		const real = truly === undefined ? '-' : trimmed(truly, 1);
		rows.push([`${i + 1}`, ...numbers, ...believed, real, `${pulls}`, `${seats}`]);
	}
	return [
		'',
		...pageLines(ANGLES_LEGEND, '  '),
		...table(rows),
		...done.checks.map(({ name, reading }) => `  ${checkReadWords(name, reading, job)}`),
		'',
		...pageLines(endingWords(done, job)),
	];
}

/** What a batch has come to: each bend over its pieces, and what a piece took. */
export function practicedBatchLines(batch: Batch): string[] {
	const { pieces, made, bends } = batch;
	const rows = bends.map(({ bend, drawn, mean, errors }) => [
		`${bend}`,
		trimmed(drawn, 1),
		errors.length === 0 ? NOT_MADE : meanErrorWords(mean),
		errors.map(signed).join(' '),
	]);
	return [
		'',
		...pageLines(practicedWords(pieces)),
		...(made.length === 0 ? [] : [pullsWords(batch)]),
		...bends.flatMap(({ bend, walks }) => (walks === null ? [] : pageLines(walkWords(bend, walks)))),
		...table([[...BATCH_HEADS], ...rows], [2, 3]),
	];
}

/** What is told when the screen of a practice by hand has closed: the true tube at its end, else that it is not to be gone on with. */
export function byHandLines({ session, station }: Practice): string[] {
	const end = standing(session.state, session.logPath);
	if ('note' in end && end.note === 'done') return endLines(end, station.trueAngles, session.state.start.job);
	return pageLines(LEFT_EARLY);
}
