/**
 * Keystroke to frame, in the code as it is bundled. Prints one line of figures; exit code 1 when the 99th percentile is not
 * under the limit.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const LIMIT_MS = 16;

// By its address: the build's own files have no types.
const { bundleOptions, root } = await import(new URL('../../.ci/bundle.mjs', import.meta.url).href);

const folder = mkdtempSync(join(tmpdir(), 'pullbook-bench-'));
await build({
	...bundleOptions,
	entryPoints: { keystroke: join(root, 'test', 'bench', 'keystroke-loop.ts') },
	outdir: folder,
	outExtension: { '.js': '.mjs' },
});
const printed = execFileSync(process.execPath, [join(folder, 'keystroke.mjs')], {
	encoding: 'utf8',
	maxBuffer: 2 ** 24,
});
rmSync(folder, { recursive: true });

const { times, processor }: { times: number[]; processor: number } = JSON.parse(printed);
times.sort((a, b) => a - b);
const at = (part: number) => times[Math.min(times.length - 1, Math.floor(part * times.length))]!;
const figures = [0.5, 0.95, 0.99, 1].map((part) => at(part).toFixed(2));
console.log(
	`keystroke to frame, ms: median ${figures[0]}, p95 ${figures[1]}, p99 ${figures[2]}, most ${figures[3]} (${times.length} keys); processor ${processor.toFixed(2)} ms a key`,
);
if (at(0.99) >= LIMIT_MS) process.exitCode = 1;
