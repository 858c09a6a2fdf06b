import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import fc from 'fast-check';
import { livePort } from '../../src/cli/session-on-screen.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { frameOf } from '../../src/screen/shell/app-frame.ts';
import { Controller } from '../../src/screen/shell/controller.ts';
import { keyOfChunk } from '../../src/screen/shell/keys.ts';
import { lookOf } from '../../src/screen/shell/look.ts';
import { KeyParser } from '../../src/terminal/key-parser.ts';
import { cellsOf } from '../../src/terminal/width.ts';
import { actsIn } from '../helpers/cli/hostile.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { FakeHome, ROWS } from '../helpers/screen/fake-ports.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import type { Subject } from './subject.ts';

interface Case {
	chunks: string[];
	columns: number;
	rows: number;
	ascii: boolean;
}

const KEYS = [
	'+',
	'+',
	'+',
	'-',
	'*',
	'/',
	'\r',
	'\r',
	'\n',
	'\b',
	'\x7f',
	'\x1b',
	'\x1b[A',
	'\x1b[B',
	'\x1bOM',
	'\x1b[200~12\x1b[201~',
	'h',
	'?',
	'u',
	'17\r',
	'19\r',
	'19.5\r',
	'1\r',
	'2\r',
	'3\r',
	'31 1/2\r',
	'999999\r',
	'1e308\r',
	'((((',
	'.',
	' ',
	'q',
	'n',
	'\u6f22',
	'\ud83d\ude80',
	'\u202e',
	'\t',
	'\x9b2J',
];

export const keys: Subject<Case> = {
	name: 'keys',
	cases: fc.record({
		chunks: fc.array(
			fc.oneof(
				{ weight: 6, arbitrary: fc.constantFrom(...KEYS) },
				{ weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 3 }) },
			),
			{
				minLength: 3,
				maxLength: 60,
				size: 'max',
			},
		),
		columns: fc.integer({ min: 60, max: 160 }),
		rows: fc.integer({ min: 20, max: 50 }),
		ascii: fc.boolean(),
	}),
	async holds({ chunks, columns, rows, ascii }, cover) {
		const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
		const session = bendIn(home, { day: 1, job: hatJob(), answers: 0, stays: true });
		try {
			const size = { columns, rows };
			const port = new FakeHome(livePort(session), ROWS);
			const display = { kept: () => ({}), keep: () => {} };
			// Now and then keys come faster than a doubt can be read.
			let time = 0;
			const world = { now: () => (time += 300), ring: () => {} };
			const controller = new Controller(port, { jobPath: 'hat.json' }, () => size, display, world);
			let over = false;
			let failed: unknown = null;
			controller.ended.then(
				() => {
					over = true;
				},
				(error: unknown) => {
					failed = error;
					over = true;
				},
			);
			const parser = new KeyParser();
			const look = lookOf({ TERM: 'xterm' }, false, ascii);
			for (const chunk of chunks) {
				await turn();
				if (over) break;
				for (const each of parser.push(chunk, 0)) {
					const key = keyOfChunk(each);
					if (key !== null) controller.take(key);
				}
				const shown = controller.snapshot();
				cover(
					shown.view === 'session'
						? `session: ${shown.session.page.page}`
						: shown.view === 'home'
							? `home: ${shown.home.page.page}`
							: shown.view,
				);
				const { lines } = frameOf(shown, size, look);
				if (lines.length > rows - 1) throw new Error(`${lines.length} lines in ${rows} rows`);
				const text = [controller.text(), ...lines.map((line) => line.map((part) => part.text).join(''))];
				if (actsIn(text.join('\n')).length > 0) throw new Error('a frame acts on the terminal');
				const wide = text.slice(1).find((line) => cellsOf(line) > columns);
				if (wide !== undefined) throw new Error(`wider than ${columns}: ${wide}`);
			}
			if (failed !== null) throw failed;
			if (!over) controller.end(0);
			if (readLog(session.logPath).damage !== null) throw new Error('the log is damaged');
		} finally {
			session.close();
			rmSync(home, { recursive: true, force: true });
		}
	},
};
