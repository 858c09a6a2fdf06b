import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMANDS, COMMON_OPTIONS } from '../../src/cli/commands.ts';
import { manPage } from '../../src/cli/man.ts';
import { TOPICS } from '../../src/words/topics/index.ts';

const page = manPage();
const folder = mkdtempSync(join(tmpdir(), 'man-'));
const file = join(folder, 'pullbook.1');
writeFileSync(file, page);
afterAll(() => rmSync(folder, { recursive: true }));

const isThere = (program: string, ...args: string[]) => spawnSync(program, args).error === undefined;
const WIDE = { ...process.env, MANWIDTH: '500', LC_ALL: 'C', MANPAGER: 'cat' };

describe('the manual page', () => {
	it('is ASCII, and each line is a text or a macro of man(7)', () => {
		expect(page).toMatch(/^[\n\x20-\x7e]+$/);
		const macros = page.split('\n').filter((line) => /^['.]/.test(line));
		expect(macros.filter((line) => !/^\.(TH|SH|SS) "|^\.TH PULLBOOK 1 |^\.(TP|PP|br|nf|fi)$/.test(line))).toEqual([]);
		expect(page.split('\n').filter((line, i, all) => line === '' && i < all.length - 1)).toEqual([]);
	});

	it.runIf(isThere('groff', '--version'))('is set by groff without a warning', () => {
		const { stderr, status } = spawnSync('groff', ['-man', '-ww', '-z', file], { encoding: 'utf8' });
		expect([status, stderr]).toEqual([0, '']);
	});

	it.runIf(isThere('mandoc', '-V'))('is sound by mandoc', () => {
		const { stdout } = spawnSync('mandoc', ['-T', 'lint', '-W', 'warning', file], { encoding: 'utf8' });
		// The page has no date: the same version gives the same page.
		expect(stdout.split('\n').filter((line) => line !== '' && !line.includes('missing date'))).toEqual([]);
	});

	it.runIf(isThere('man', '--version'))('shows all of the help by man, as it stands there', () => {
		const { stdout, status } = spawnSync('man', ['-l', file], { encoding: 'utf8', env: WIDE });
		expect(status).toBe(0);
		const shown = stdout.replace(/\s+/g, ' ');
		// groff has no such character on a terminal of ASCII, and says it otherwise.
		const known = (text: string) =>
			text
				.replaceAll('…', '...')
				.replace(/\s+/g, ' ')
				.split(/[^\x20-\x7e]/);
		for (const [name, { options, notes = [], examples }] of Object.entries(COMMANDS)) {
			expect(shown).toContain(`pullbook ${name}`);
			const texts = [...Object.keys({ ...options, ...COMMON_OPTIONS }).map((option) => `--${option}`), ...notes];
			for (const text of [...texts, ...examples.flat()].flatMap(known)) expect(shown).toContain(text.trim());
		}
		const rows = Object.values(TOPICS).flatMap(({ sections }) => sections.flatMap(({ rows = [] }) => rows.flat()));
		for (const text of rows.flatMap(known)) expect(shown).toContain(text.trim());
	});
});
