/**
 * Types on the pull page at 80 by 24 in a headless terminal and prints, as JSON, the milliseconds from each key's bytes coming
 * in to the terminal showing it, and the processor's milliseconds a key. Run by keystroke.ts.
 */
import { openScreen } from '../../src/screen/open-screen.tsx';
import { PULL, SET } from '../helpers/asks.ts';
import { FakeHome, FakeLive } from '../helpers/fake-ports.ts';
import { HeadlessTerminal } from '../helpers/mount.tsx';

const WARM_UP = 100;
const KEYS = 2000;

const terminal = new HeadlessTerminal({ columns: 80, rows: 24 });
const home = new FakeHome(new FakeLive([SET, PULL]));
const ended = openScreen({
	port: home,
	jobPath: 'arch.json',
	stdin: terminal.stdin,
	stdout: terminal.stdout,
	environment: {},
});
await terminal.until('STOP');

const times: number[] = [];
let before = process.cpuUsage();
let field = '';
for (let count = 0; count < WARM_UP + KEYS; count++) {
	// Six digits, then six times backspace, over and over.
	const grows = count % 12 < 6;
	field = grows ? field + String(count % 10) : field.slice(0, -1);
	if (count === WARM_UP) before = process.cpuUsage();
	const from = performance.now();
	terminal.type(grows ? field.slice(-1) : '\x7f');
	const shows = field;
	await terminal.until(() =>
		terminal.lines.some((line) => line === `> ${shows}`.trimEnd() || line.startsWith(`> ${shows} `)),
	);
	if (count >= WARM_UP) times.push(performance.now() - from);
}
const used = process.cpuUsage(before);
terminal.type('\x03');
await ended;

process.stdout.write(JSON.stringify({ times, processor: (used.user + used.system) / 1000 / KEYS }));
