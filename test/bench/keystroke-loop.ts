/**
 * Types on the pull page in a headless terminal of each size and prints, as JSON, the milliseconds from each key's bytes coming in to the
 * terminal showing it, the bytes written for each key, and the processor's milliseconds a key; then the same of keys that turn to another
 * page. Run by keystroke.ts and, with fewer keys and no other pages, by patches.ts.
 */
import { openScreen } from '../../src/screen/shell/open-screen.tsx';
import { finishedShape } from '../../src/tube/resolve.ts';
import { PULL, SET } from '../helpers/screen/asks.ts';
import { ARCH, FakeHome, FakeLive, KEPT } from '../helpers/screen/fake-ports.ts';
import { HeadlessTerminal } from '../helpers/screen/mount.tsx';

const WARM_UP = 100;
const KEYS = Number(process.argv[2] ?? 2000);
const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 160, rows: 50 },
];

async function typed(size: { columns: number; rows: number }) {
	const terminal = new HeadlessTerminal(size);
	const live = Object.assign(new FakeLive([SET, { ...PULL, pull: 3 }], [], ARCH, KEPT), {
		pulls: () => [
			{ loaded: 44, released: 40.5, measured: [40.7] },
			{ loaded: 48.5, released: 45.25, measured: [] },
		],
		shape: () => finishedShape(ARCH, { value: 1.01 }),
	});
	const ended = openScreen({
		port: new FakeHome(live),
		jobPath: 'arch.json',
		stdin: terminal.stdin,
		stdout: terminal.stdout,
		environment: { TERM: 'xterm-256color' },
	});
	await terminal.until('STOP');
	const times: number[] = [];
	const bytes: number[] = [];
	let before = process.cpuUsage();
	let field = '';
	for (let count = 0; count < WARM_UP + KEYS; count++) {
		// Six digits, then six times backspace, over and over.
		const grows = count % 12 < 6;
		field = grows ? field + String(count % 10) : field.slice(0, -1);
		if (count === WARM_UP) before = process.cpuUsage();
		const written = terminal.raw.length;
		const from = performance.now();
		terminal.type(grows ? field.slice(-1) : '\x7f');
		const shows = field;
		await terminal.until(() =>
			terminal.lines.some((line) => line === `> ${shows}`.trimEnd() || line.startsWith(`> ${shows} `)),
		);
		if (count < WARM_UP) continue;
		times.push(performance.now() - from);
		bytes.push(Buffer.byteLength(terminal.raw.slice(written)));
	}
	const used = process.cpuUsage(before);
	if (field !== '') terminal.type('\x1b');
	await terminal.until('> ');
	const pages = await turned(terminal);
	terminal.type('\x03');
	await ended;
	return { ...size, times, bytes, processor: (used.user + used.system) / 1000 / KEYS, pages };
}

/** Keys that lead from the pull to other pages and back, each with what is on the screen then. */
const TOUR: readonly (readonly [keys: string, shows: string])[] = [
	['h', 'Pull until the dial'],
	['/', 'Pull 3'],
	['*', 'write a note'],
	['/', 'Pull 3'],
	['\x1b[A', 'Earlier readings'],
	['\x1b[B', 'Pull 3'],
	['u', 'mm'],
	['u', 'fractions'],
	['u', 'decimals'],
	['/', 'Take back'],
	['/', 'Pull 3'],
];
const ROUNDS = Number(process.argv[3] ?? 20);

async function turned(terminal: HeadlessTerminal) {
	const [times, bytes]: [number[], number[]] = [[], []];
	for (let round = 0; round < ROUNDS; round++) {
		for (const [keys, shows] of TOUR) {
			const written = terminal.raw.length;
			const from = performance.now();
			terminal.type(keys);
			await terminal.until(() => terminal.raw.length > written && terminal.text.includes(shows));
			times.push(performance.now() - from);
			bytes.push(Buffer.byteLength(terminal.raw.slice(written)));
		}
	}
	return { times, bytes };
}

const runs = [];
for (const size of SIZES) runs.push(await typed(size));
process.stdout.write(JSON.stringify(runs));
