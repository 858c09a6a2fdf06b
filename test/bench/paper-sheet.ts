/**
 * How long a shop sheet takes, in processor time of its process, against what Node itself takes to start and stop in the same run; and how much
 * memory. Exit code 1 when a limit is passed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { median } from './rounds.ts';
import { METER, metered, type Spent } from './spent.ts';

const ROUNDS = 7;
/** A sheet takes at most 1.5 s of a processor that starts Node in 83 ms. */
const MOST_TIMES_NODE = 18;
const MOST_MEGABYTES = 250;

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = join(root, '.build', 'pullbook.js');
const home = mkdtempSync(join(tmpdir(), 'pullbook-bench-'));
/** What Node took with these arguments. */
function measured(args: readonly string[]): Spent {
	const { status, stderr } = spawnSync(process.execPath, [...METER, ...args], { cwd: root, encoding: 'utf8' });
	if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
	return metered(stderr);
}

try {
	const jobs = readdirSync(join(root, 'jobs')).filter((name) => name.endsWith('.json'));
	const rows = jobs.map((name) => {
		const bends = JSON.parse(readFileSync(join(root, 'jobs', name), 'utf8')).shape.bends?.length ?? 'points';
		const args = [program, 'paper', join('jobs', name), '--out', '-', '--home', home];
		const rounds = Array.from({ length: ROUNDS }, () => ({ bare: measured(['-e', '0']), sheet: measured(args) }));
		const bare = median(rounds.map((round) => round.bare.milliseconds));
		const sheet = median(rounds.map((round) => round.sheet.milliseconds));
		return {
			name,
			bends,
			bare,
			sheet,
			times: sheet / bare,
			mb: Math.max(...rounds.map((round) => round.sheet.megabytes)),
		};
	});
	for (const { name, bends, bare, sheet, times, mb } of rows)
		console.log(
			`${name.padEnd(24)} ${String(bends).padStart(6)} bends  Node ${bare.toFixed(0)} ms  sheet ${sheet.toFixed(0)} ms  ${times.toFixed(1)} times  ${mb.toFixed(0)} MB`,
		);
	if (rows.some(({ times, mb }) => times > MOST_TIMES_NODE || mb > MOST_MEGABYTES)) process.exitCode = 1;
} finally {
	rmSync(home, { recursive: true, force: true });
}
