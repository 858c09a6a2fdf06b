import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { homePort } from '../../src/cli/home.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { actsIn } from '../helpers/cli/hostile.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { runHere } from '../helpers/disk/run-here.ts';
import { frameText } from '../helpers/screen/page-frame.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { type Damage, damage, damaged, SOUND, soundLog } from './log-damage.ts';
import type { Cover, Subject } from './subject.ts';

interface Case {
	damages: Damage[];
	/** Of which sound log; the first where it is not said. */
	log?: number;
	/** What else reads it: all of that for one case would be too long. */
	further?: number;
}

/** Commands that read a log, `log` and `log ID` aside, which read every one. */
function furtherCommands(id: string, other: string, home: string): string[][] {
	return [
		['log', id, '--csv'],
		['log', id, other],
		['log', other, id, '--json'],
		['log', '--csv'],
		['log', '--trend'],
		['log', 'verify'],
		['log', 'verify', '--json'],
		['log', 'export', join(home, 'out')],
		['log', 'import', join(home, 'sessions')],
		['bender'],
		['paper', id, '--out', join(home, 'record.pdf')],
		['bend', '/none.json', '--lines', '--resume'],
		['bend', '/none.json', '--lines', '--resume', id],
	];
}

/** The pages of the review, each by the keys that lead to it from the last one. */
const PAGES = ['look at a kept\r', '2\r', ...'+++++++++', '1+', '6', '6', '6', '6', '+'];

/** Every page of the review on the screen. */
async function reviewed(home: string, cover: Cover): Promise<void> {
	const own = { own: home, samples: null };
	const port = homePort({ home, rescue: null }, own, true, () => ({ mirror: false, from: 'start' }));
	for (let pages = 1; pages <= PAGES.length; pages++) {
		const shown = await frameText(port, { columns: 80, rows: 24 }, { keys: PAGES.slice(0, pages).join('') });
		if (actsIn(shown).length > 0) throw new Error(`the log acts on the terminal after ${PAGES[pages - 1]}`);
		cover(`screen: ${shown.slice(0, shown.search(/ {2}|\n/)).replace(/\d+/g, 'N')}`);
	}
}

const COMMANDS = furtherCommands('', '', '').length;

/** Runs a command; what it comes to is an exit code that says what is wrong, and nothing that acts on a terminal. */
async function reads(args: string[], home: string, cover: Cover) {
	const run = await runHere(args, { home });
	const name = args.map((arg) => (/[\d/]/.test(arg) ? 'X' : arg)).join(' ');
	if (run.code === 1) throw new Error(`the log ends ${name}: ${run.err}`);
	// Lines of a table end as RFC 4180 has it.
	const out = args.includes('--csv') ? run.out.replaceAll('\r\n', '\n') : run.out;
	if (actsIn(out + run.err).length > 0) throw new Error(`the log acts on the terminal: ${name}`);
	cover(`${name}: ${run.code}`);
	return run;
}

export const logs: Subject<Case> = {
	name: 'logs',
	cases: fc.record({
		damages: fc.array(damage, { minLength: 1, maxLength: 3 }),
		log: fc.nat(SOUND - 1),
		further: fc.nat(COMMANDS),
	}),
	async holds({ damages, log = 0, further }, cover) {
		const { id, bytes } = soundLog(log);
		const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
		try {
			const session = bendIn(home, { day: 2, job: hatJob(), answers: 1 });
			writeFileSync(sessionPath(home, id), damages.reduce(damaged, bytes));
			for (const form of [[], ['--json']]) {
				const listed = await reads(['log', ...form], home, cover);
				if (!(listed.out + listed.err).includes(session.id)) throw new Error('one bad log hides the others');
				await reads(['log', id, ...form], home, cover);
			}
			if (further === COMMANDS) await reviewed(home, cover);
			else if (further !== undefined) await reads(furtherCommands(id, session.id, home)[further]!, home, cover);
		} finally {
			rmSync(home, { recursive: true, force: true });
		}
	},
};
