/**
 * What printing takes: the most memory that a process had for a profile of 20 sheets, and how long each part takes as a multiple of what Node
 * itself takes to start and stop. By the built program. Exit code 1 when memory passes its limit.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROGRAM } from '../helpers/disk/program.ts';
import { readPdf } from '../helpers/paper/pdf.ts';

const LIMIT_MB = 250;
const SHEETS = 20;
const ROUNDS = 5;

const folder = mkdtempSync(join(tmpdir(), 'pullbook-bench-paper-'));
const home = join(folder, 'home');
const measure = join(folder, 'measure.mjs');
// Says at its end how much memory the process had at most (kilobytes, getrusage(2)).
writeFileSync(measure, "process.on('exit', () => console.error('most', process.resourceUsage().maxRSS));\n");

interface Taken {
	/** Milliseconds, and megabytes at most. */
	ms: number;
	mb: number;
	bytes: Uint8Array;
}

function run(args: readonly string[]): Taken {
	const start = performance.now();
	const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', measure, ...args], {
		maxBuffer: 1e8,
		env: { ...process.env, PULLBOOK_HOME: home },
	});
	const ms = performance.now() - start;
	const most = /^most (\d+)$/m.exec(stderr.toString())?.[1];
	if (status !== 0 || most === undefined) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
	return { ms, mb: Number(most) / 1024, bytes: stdout };
}

/** A job file of a tube that lies in one plane, with two coped ends, so long in mm. */
function jobFile(straight: number): string {
	const file = join(folder, `${straight}.json`);
	const bend = (rotation: number) => ({ straight, angle: 35, rotation });
	const cope = { od: 48.3, angle: 60, offset: 6, turn: 30 };
	const job = {
		pullbook: 'job/1',
		name: 'Rescue rail',
		units: 'mm',
		tube: { material: '316l-annealed', od: 38.1, wall: 2 },
		tooling: { clr: 114, growth: 1.01 },
		shape: { bends: [bend(0), bend(180), bend(180), bend(180)], last: straight },
		ends: { start: { cope }, far: { cope } },
	};
	writeFileSync(file, JSON.stringify(job));
	return file;
}

/** Sheets of the profile, its map not counted. */
async function sheetsOf(file: string): Promise<number> {
	const { bytes } = run([PROGRAM, 'paper', file, '--parts', 'profile', '--out', '-']);
	return (await readPdf(bytes)).length - 1;
}

/** The shortest straights with which the profile takes that many sheets or more. */
async function longEnough(): Promise<string> {
	for (let straight = 400; ; straight += 100) {
		const file = jobFile(straight);
		if ((await sheetsOf(file)) >= SHEETS) return file;
	}
}

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

try {
	const file = await longEnough();
	const sheets = await sheetsOf(file);
	const taken = new Map<string, Taken[]>();
	const cases: Record<string, string[]> = {
		'node alone': ['-e', '0'],
		sheet: [PROGRAM, 'paper', file, '--out', '-'],
		wraps: [PROGRAM, 'paper', file, '--parts', 'wraps', '--out', '-'],
		copes: [PROGRAM, 'paper', file, '--parts', 'copes', '--out', '-'],
		[`profile, ${sheets} sheets`]: [PROGRAM, 'paper', file, '--parts', 'profile', '--out', '-'],
	};
	for (let round = 0; round < ROUNDS; round++)
		for (const [name, args] of Object.entries(cases)) taken.set(name, [...(taken.get(name) ?? []), run(args)]);
	const bare = median(taken.get('node alone')!.map(({ ms }) => ms));
	let most = 0;
	for (const [name, runs] of taken) {
		const mb = Math.max(...runs.map((each) => each.mb));
		most = Math.max(most, mb);
		const ms = median(runs.map((each) => each.ms));
		console.log(`${name.padEnd(24)} ${(ms / bare).toFixed(1).padStart(5)} x node, ${mb.toFixed(0).padStart(4)} MB`);
	}
	if (most > LIMIT_MB) {
		console.error(`More than ${LIMIT_MB} MB.`);
		process.exitCode = 1;
	}
} finally {
	rmSync(folder, { recursive: true, force: true });
}
