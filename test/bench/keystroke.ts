/**
 * Keystroke to frame, in the code as it is bundled. Prints a line of figures for each size of the window; exit code 1 when a 99th percentile
 * or the most bytes written for a key are not under their limits.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundled, PATCHES } from './bundled.ts';

const LIMIT_MS = 16;
const LIMIT_BYTES = 1024;

interface Run {
	columns: number;
	rows: number;
	times: number[];
	bytes: number[];
	processor: number;
	/** Of keys that turn to another page. */
	pages: { times: number[]; bytes: number[] };
}

const folder = mkdtempSync(join(tmpdir(), 'pullbook-bench-'));
const loop = await bundled('test/bench/keystroke-loop.ts', folder, PATCHES);
const printed = execFileSync(process.execPath, [loop], {
	encoding: 'utf8',
	maxBuffer: 2 ** 24,
});
rmSync(folder, { recursive: true });

for (const { columns, rows, times, bytes, processor, pages } of JSON.parse(printed) as Run[]) {
	const at = (part: number) => ranked(times, part);
	const figures = [0.5, 0.95, 0.99, 1].map((part) => at(part).toFixed(2));
	const most = Math.max(...bytes);
	console.log(
		`keystroke to frame at ${columns}x${rows}, ms: median ${figures[0]}, p95 ${figures[1]}, p99 ${figures[2]}, most ${figures[3]} (${times.length} keys); processor ${processor.toFixed(2)} ms and at most ${most} bytes a key`,
	);
	const [least, middle, last] = [0, 0.5, 1].map(
		(part) => [ranked(pages.bytes, part), ranked(pages.times, part)] as const,
	);
	console.log(
		`another page at ${columns}x${rows}: bytes written least ${least![0]}, median ${middle![0]}, most ${last![0]}; ms median ${middle![1].toFixed(2)}, most ${last![1].toFixed(2)} (${pages.bytes.length} keys)`,
	);
	if (at(0.99) >= LIMIT_MS || most >= LIMIT_BYTES) process.exitCode = 1;
}

function ranked(values: readonly number[], part: number): number {
	const sorted = values.toSorted((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!;
}
