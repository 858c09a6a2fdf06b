import { createInterface } from 'node:readline';
import type { LiveSession } from '../journal/live.ts';
import type { Output } from '../session/protocol/notes.ts';
import { jsonText } from '../words/foreign.ts';
import { asLine } from '../words/line.ts';
import { type Io, tellOn } from './io.ts';

/** Left to be resumed. */
const LEFT = 3;

/**
 * The guided session over standard input and output, one JSON object a line. Resolves to the exit code: 0 done or scrapped,
 * 3 left by quit, end of input or a closed output.
 */
export async function runLines(session: LiveSession, { stdin, stdout, stderr }: Io): Promise<number> {
	const print = (outputs: readonly Output[]) => {
		for (const output of outputs) stdout.write(`${jsonText(asLine(output, session.state.start.job))}\n`);
		for (const message of session.messages.splice(0)) tellOn({ stderr })(message);
	};
	// Printed before anything is read: a reader that answers at once must not answer into the void.
	print(session.opening);
	if (session.ended === null) await answerLines(session, stdin, stdout, print);
	if (session.ended === 'done') return 0;
	if (session.ended === null) session.leave();
	return LEFT;
}

async function answerLines(
	session: LiveSession,
	stdin: Io['stdin'],
	stdout: Io['stdout'],
	print: (o: Output[]) => void,
) {
	const lines = createInterface({ input: stdin, crlfDelay: Number.POSITIVE_INFINITY });
	stdout.on('error', () => lines.close());
	for await (const line of lines) {
		if (line.trim() === '') continue;
		print(session.answerText(line));
		if (session.ended !== null) break;
	}
	lines.close();
}
