import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { COMMANDS } from '../../src/cli/commands.ts';

const file = (name: string) => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
const readme = file('README.md');
const blocks = readme.split(/^```.*$/m).filter((_, i) => i % 2 === 1);

describe('the README', () => {
	it('has the two commands as they are written', () => {
		expect(blocks.map((block) => block.trim())).toEqual(
			expect.arrayContaining(['npm ci && npm start', 'npm ci && npm test']),
		);
	});

	it('prints the sample job as it is', () => {
		expect(blocks.map((block) => block.trim())).toContain(file('jobs/handrail-knee.json').trim());
	});

	it('names every command', () => {
		for (const name of Object.keys(COMMANDS)) expect(readme).toContain(`\`pullbook ${name}`);
	});

	it('writes only command lines that are understood', () => {
		const lines = [...readme.matchAll(/(?:`|^\$ )(?:pullbook|npm start --) ([^`\n]+)/gm)].map(([, line]) => line!);
		expect(lines.length).toBeGreaterThan(10);
		for (const line of lines) expect(() => readCommandLine(line.split(' ')), line).not.toThrow();
	});

	it('shows screens that fit a terminal of 80 columns by 24 rows', () => {
		const screens = blocks.filter((block) => block.includes('────'));
		expect(screens.length).toBeGreaterThan(4);
		for (const screen of screens) {
			const rows = screen.trim().split('\n');
			expect(rows.length).toBeLessThan(24);
			expect(rows.filter((row) => row.length > 80)).toEqual([]);
		}
	});
});
