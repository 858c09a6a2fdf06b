import type { LiveSession } from '../journal/live.ts';
import { LONGEST_LINE } from '../session/protocol/answer-text.ts';
import type { Output } from '../session/protocol/notes.ts';
import { jsonText } from '../words/foreign.ts';
import { journalWords } from '../words/journal.ts';
import { asLine } from '../words/line-mode.ts';
import { EXIT } from './exit.ts';
import { type Io, tellOn } from './io.ts';
import { linesIn, unless } from './line-reader.ts';

/**
 * The guided session over standard input and output, one JSON object a line. Resolves to the exit code: 0 done or scrapped,
 * 3 left by quit, end of input or a closed output, 5 where the last answer is not saved, at once when the log can take no more.
 */
export async function runLines(session: LiveSession, io: Io): Promise<number> {
	const { stdin, stdout } = io;
	const tell = tellOn(io);
	const reader = new AbortController();
	stdout.once('error', () => reader.abort());
	const gone = reader.signal;
	let isUnsaved = false;
	/** Resolves when whoever reads has room for more, or is gone: what nobody reads must not pile up. */
	const print = async (outputs: readonly Output[]) => {
		if (outputs.length > 0) isUnsaved = outputs.some(isNotSaved);
		let hasRoom = true;
		for (const output of outputs) hasRoom = stdout.write(`${jsonText(asLine(output, session.state.start.job))}\n`);
		for (const notice of session.notices.splice(0)) tell(journalWords(notice));
		if (!hasRoom) await unless(gone, new Promise<void>((resolve) => stdout.once('drain', resolve)));
	};
	// Printed before anything is read: a reader that answers at once must not answer into the void.
	await print(session.opening);
	if (session.ended === null) {
		for await (const line of linesIn(stdin, LONGEST_LINE, gone)) {
			if (line.trim() === '') continue;
			await print(session.answerText(line));
			if (session.ended !== null || session.isLost) break;
		}
	}
	if (session.ended === 'done') return 0;
	if (session.ended === null && !session.isLost) session.leave();
	await print([]);
	return isUnsaved ? EXIT.notSaved : EXIT.left;
}

const isNotSaved = (output: Output): boolean =>
	'note' in output && output.note === 'refused' && output.code === 'not-saved';
