import type { Practice, PracticeStep } from '../practice/practice.ts';
import { standing } from '../session/outputs.ts';
import type { Ask } from '../session/protocol/asks.ts';
import type { DoneNote, Output } from '../session/protocol/notes.ts';
import type { Job } from '../tube/job.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import { actionInWords, askInWords, value } from './practice.ts';
import { invitation, verdictWords } from './verdict.ts';

const WIDTH = 80;

/** One turn of the session as lines of text: what is asked, why, and the answer; before a bend's first seat its heading. */
export function stepLines({ ask, action, outputs }: PracticeStep, job: Job): string[] {
	const { what, why } = askInWords(ask, job);
	return [
		...heading(ask),
		...wrapped(what, '  '),
		...(why === '' ? [] : wrapped(why, '         ')),
		...wrapped(actionInWords(ask, action, job), '      -> '),
		...outputs.flatMap((output) => correctedLines(output, job)),
	];
}

function heading(ask: Ask): string[] {
	if (ask.ask !== 'set' || ask.seat > 1) return [];
	const drawn = Math.abs(ask.target - ask.design) < 0.005 ? '' : ` (drawing ${formatAngle(ask.design, 2)})`;
	return ['', `Bend ${ask.bend} of ${ask.bends}: ${formatAngle(ask.target, 2)}${drawn}`];
}

function correctedLines(output: Output, job: Job): string[] {
	if (!('note' in output) || output.note !== 'corrected') return [];
	const { predicted, without, remaining } = output;
	// After the last bend nothing is left to correct: the end tells the rest.
	if (remaining.length === 0) return [];
	const [now, drawn] = [predicted.endOffset, without.endOffset].map((offset) => formatLength(offset, job.units));
	return wrapped(`corrected: the far end is expected ${now} from its place; by the drawing's numbers ${drawn}.`, '  ');
}

const LEGEND =
	'Angles in degrees. Believed: what the program takes a bend for; truly: what the simulated tube has, which no shop knows.';

/** The end: what was aimed at, what the program believes was made, and what truly was. */
export function endLines(done: DoneNote, trueAngles: readonly number[], job: Job): string[] {
	const rows = [['bend', 'drawing', 'target', 'believed', 'truly', 'pulls', 'set-ups']];
	for (const [i, { design, target, made, sd, pulls, seats }] of done.bends.entries()) {
		const believed = made === null ? '-' : `${trimmed(made, 1)} ± ${trimmed(Math.max(0.1, sd ?? 0), 1)}`;
		const truly = trueAngles[i];
		const numbers = [design, target].map((angle) => trimmed(angle, 2));
		const real = truly === undefined ? '-' : trimmed(truly, 2);
		rows.push([`${i + 1}`, ...numbers, believed, real, `${pulls}`, `${seats}`]);
	}
	return [
		'',
		...wrapped(LEGEND, '  '),
		...table(rows),
		...done.checks.map(
			({ name, reading }) => `  check ${name}: ${reading === null ? 'not read' : value('check', name, reading, job)}`,
		),
		'',
		...wrapped(ending(done, job), ''),
	];
}

function ending(done: DoneNote, job: Job): string {
	const { scrapped, endOffset, endAngle, sd, fits, chance, tellsMost } = done;
	if (scrapped || endOffset === null || endAngle === null || sd === null) return 'The tube was scrapped.';
	const end = `Far end ${formatLength(endOffset, job.units)} from its place, ${formatAngle(endAngle, 2)} from its direction.`;
	const give = `Give or take ${formatLength(sd.endOffset, job.units)} and ${formatAngle(sd.endAngle, 2)}.`;
	return [end, give, verdictWords(fits, chance), invitation(fits, chance, tellsMost) ?? ''].join(' ').trim();
}

/** What is told when the screen of a practice by hand has closed: the true tube at its end, else that it is not to be gone on with. */
export function byHandLines({ session, station }: Practice): string[] {
	const end = standing(session.state, session.logPath);
	if ('note' in end && end.note === 'done') return endLines(end, station.trueAngles, session.state.start.job);
	return wrapped(
		'Left before its end. A simulated bender forgets its tube, so this session cannot be gone on with.',
		'',
	);
}

function table(rows: readonly (readonly string[])[]): string[] {
	const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
	return rows.map((row) => `  ${row.map((cell, i) => cell.padStart(widths[i]!)).join('  ')}`);
}

/** Text broken between words to lines of at most `WIDTH`; the first begins with `lead`, the others as far in. */
export function wrapped(text: string, lead: string): string[] {
	const lines: string[] = [];
	let line = lead;
	for (const word of text.split(' ')) {
		if (line.length > lead.length && line.length + 1 + word.length > WIDTH) {
			lines.push(line.trimEnd());
			line = ' '.repeat(lead.length) + word;
		} else line += (line.length > lead.length ? ' ' : '') + word;
	}
	return [...lines, line.trimEnd()];
}
