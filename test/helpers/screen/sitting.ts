import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readLog } from '../../../src/journal/read-log.ts';
import { SEEN_MS } from '../../../src/screen/session/typed-ahead.ts';
import { ask } from '../../../src/session/ask.ts';
import { readBack } from '../../../src/session/log/read-back.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import { PROGRAM } from '../disk/program.ts';
import { operatorAt } from '../shop/operator.ts';
import { newMachine } from '../shop/plain-shop.ts';
import { Pty } from './pty.ts';

/** Enter of a numeric pad arrives as a newline. */
const ENTER = '\n';

/** The log that was written last. */
const logOf = (folder: string) => {
	const names = readdirSync(join(folder, 'sessions')).filter((file) => file.endsWith('.log'));
	const paths = names.map((name) => join(folder, 'sessions', name));
	const written = new Map(paths.map((path) => [path, statSync(path).mtimeMs]));
	return paths.sort((a, b) => written.get(b)! - written.get(a)!)[0]!;
};

/** The keys of the numeric pad that give an answer; a question at a time, each with Enter. */
function keysFor(open: Ask, answer: Record<string, unknown>): string[] {
	switch (open.ask) {
		case 'set':
			return ['+'];
		case 'pull':
			return [`${answer.loaded}${ENTER}`, `${answer.released}${ENTER}`];
		case 'measure':
			// Two readings are given one at a time, as a person takes them.
			return [`${(answer.angles as number[] | undefined)?.[0] ?? answer.angle}${ENTER}`];
		case 'confirm':
			return [`${answer.reading}${ENTER}`];
		case 'check':
			// The yard has no second tube to hold it against: what is expected is what is read.
			return [`${open.expect.value.toFixed(3)}${ENTER}`];
		case 'decide':
			return ['+'];
	}
}

/** How the keys are given. */
interface Hands {
	/** Milliseconds between two bytes; 0: an answer at once. */
	gap?: number;
	/** What is done at each question before it is answered. */
	before?: (pty: Pty, open: Ask) => Promise<void>;
}

/** A simulated person at a simulated bender before the built program in a pseudo-terminal, with nothing but a numeric pad. */
export class Sitting {
	/** Every byte that was typed. */
	typed = '';
	private readonly operator = operatorAt(newMachine(4242));
	constructor(
		readonly folder: string,
		private readonly hands: Hands = {},
	) {}

	start(columns: number, rows: number, args: string[]): Pty {
		return new Pty(process.execPath, [PROGRAM, ...args, '--home', this.folder], { columns, rows });
	}

	state() {
		return readBack(readLog(logOf(this.folder)).records);
	}

	/** Answers what is open with numeric-pad keys, until `stop` says so or nothing is asked any more. */
	async play(pty: Pty, stop: (open: Ask) => boolean): Promise<void> {
		for (;;) {
			const before = this.state();
			const open = ask(before);
			if (!open || stop(open)) return;
			await this.hands.before?.(pty, open);
			await this.answer(pty, open, before.entries.length);
		}
	}

	private async answer(pty: Pty, open: Ask, entries: number): Promise<void> {
		const answer = this.operator.answer(open);
		if (open.ask === 'confirm') {
			await pty.until('Is that right?');
			await read();
		}
		let drafts = 0;
		for (const [i, keys] of keysFor(open, answer).entries()) {
			// A dial far from the stop is asked again while the tube is held, before anything is released.
			if (open.ask === 'pull' && i === 1 && Math.abs(Number(answer.loaded) - open.stop) > 1) break;
			if (open.ask === 'pull' && i === 1) await pty.until('after release');
			// The first of two numbers stands in the log by itself.
			if (isHalf(open) && i === 1) drafts = 1;
			await this.press(pty, keys);
		}
		// A correction or the caution before opening a bend is read first, and understood with the same key.
		const moved = () => this.state().entries.length > entries + drafts;
		while (!moved()) {
			await pty.until((text) => {
				if (/^Caution/.test(text) && !moved()) void this.press(pty, '+');
				return moved() || text.includes(TOO_EARLY);
			});
			if (moved()) continue;
			// The doubt's page came after the one that stood there: what was typed before it could be read is taken up.
			await read();
			await this.press(pty, ENTER);
			await pty.until(() => moved() || !pty.text.includes(TOO_EARLY));
		}
		// Two numbers given at once are two lines: the first may be off the screen again before it is seen.
		const saved = (text: string) => Number(/Saved as line (\d+)/.exec(text)?.[1] ?? 0) > entries + drafts;
		await pty.until((text) => /^(Corrected|The tube as made|Done)/.test(text) || saved(text));
		if (/^(Corrected|The tube as made)/.test(pty.text)) await this.press(pty, '+');
	}

	async press(pty: Pty, keys: string): Promise<void> {
		this.typed += keys;
		const { gap = 0 } = this.hands;
		if (gap === 0) pty.write(keys);
		else await pty.type(keys, gap);
	}

	/** From a tube's last page to the next piece: the page wants to be read first. */
	async nextPiece(pty: Pty): Promise<void> {
		await read();
		await this.press(pty, '+');
	}

	/** From the start of the program to the first mark. */
	async open(pty: Pty): Promise<void> {
		await pty.until(/^(New session|Piece)/);
		await this.press(pty, '+');
		// A small window has no room for the marks on the first page.
		await pty.until(/^(Lay out the tube|Set|Corrected)/);
		if (/^Lay out/.test(pty.text)) await this.press(pty, '+');
		await pty.until(/^(Set|Corrected)/);
		if (/^Corrected/.test(pty.text)) await this.press(pty, '+');
	}
}

/** What the page says of keys that came before a doubt could be read. */
const TOO_EARLY = 'Not used.';

/** As long as the program wants a page to be read before it takes a key. */
const read = () => new Promise((resolve) => setTimeout(resolve, SEEN_MS));

/** Whether two numbers make the answer. */
const isHalf = (open: Ask): boolean => open.ask === 'pull' || (open.ask === 'check' && open.kind === 'ovality');
