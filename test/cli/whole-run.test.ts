import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLog } from '../../src/journal/read-log.ts';
import { ask } from '../../src/session/ask.ts';
import type { Ask } from '../../src/session/protocol.ts';
import { readBack } from '../../src/session/read-back.ts';
import { status } from '../../src/session/views.ts';
import { operatorAt } from '../helpers/operator.ts';
import { newMachine } from '../helpers/plain-shop.ts';
import { PROGRAM, runProgram, SAMPLE_JOBS } from '../helpers/program.ts';
import { Pty } from '../helpers/pty.ts';

// As a person types it: from the project's folder.
const JOB = relative(process.cwd(), SAMPLE_JOBS.find((path) => path.includes('bow-rail'))!);
/** Enter of a numeric pad arrives as a newline. */
const ENTER = '\n';
let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'whole-'));
});
afterAll(() => rmSync(home, { recursive: true }));

const logOf = (folder: string) => {
	const [name] = readdirSync(join(folder, 'sessions')).filter((file) => file.endsWith('.log'));
	return join(folder, 'sessions', name!);
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

class Sitting {
	readonly operator = operatorAt(newMachine(4242));
	constructor(readonly folder: string) {}

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
			await this.answer(pty, open, before.entries.length);
		}
	}

	private async answer(pty: Pty, open: Ask, entries: number): Promise<void> {
		const answer = this.operator.answer(open);
		for (const [i, keys] of keysFor(open, answer).entries()) {
			// A dial far from the stop is asked again while the tube is held, before anything is released.
			if (open.ask === 'pull' && i === 1 && Math.abs(Number(answer.loaded) - open.stop) > 1) break;
			if (open.ask === 'pull' && i === 1) await pty.until('released');
			pty.write(keys);
		}
		// A correction or the caution before opening a bend is read first, and understood with the same key.
		const moved = () => this.state().entries.length > entries;
		await pty.until((text) => {
			if (/^Caution/.test(text) && !moved()) pty.write('+');
			return moved();
		});
		const read = new RegExp(`^Corrected|^The tube as made|^Done|Saved as entry ${entries + 1}`);
		await pty.until(read);
		if (/^(Corrected|The tube as made)/.test(pty.text)) pty.write('+');
	}
}

describe.each([
	[80, 24],
	[60, 20],
])('a whole job at %i x %i, by numeric pad alone', (columns, rows) => {
	it('is bent, killed in the middle, resumed, finished and reviewed', { timeout: 120_000 }, async () => {
		const sitting = new Sitting(join(home, `${columns}`));
		const first = sitting.start(columns, rows, ['bend', JOB]);
		await first.until('New session');
		first.write('+');
		await first.until('Lay out the tube');
		first.write('+');
		await first.until(/^(Set|Corrected)/);
		if (/^Corrected/.test(first.text)) first.write('+');
		await sitting.play(first, (open) => open.ask === 'pull' && open.bend === 2);
		const open = ask(sitting.state());
		first.kill('SIGKILL');
		await first.ended;

		const offered = sitting.start(columns, rows, ['bend', JOB]);
		await offered.until(/interrupted|go on/);
		offered.write('\x03');
		await offered.ended;
		const second = sitting.start(columns, rows, ['bend', JOB, '--resume']);
		await second.until('Session goes on');
		second.write('+');
		await second.until(/^Pull/);
		expect({ ...ask(sitting.state()), entry: 0 }).toEqual({ ...open, entry: 0 });
		await sitting.play(second, () => false);
		await second.until(/^Done/);
		second.write('+');
		expect(status(sitting.state())).toBe('done');
		second.write('\x03');
		await second.ended;

		const review = await runProgram(['log'], { home: sitting.folder });
		expect(review.out).toContain('3 of 3 bends');
	});
});
