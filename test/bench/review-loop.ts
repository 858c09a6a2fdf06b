/**
 * Types on plots, on a turned tube and in a list of very many sessions, in a headless terminal at 160x50, and prints as JSON the
 * milliseconds from each key's bytes coming in to the terminal showing it. Run by review.ts with the home of that list.
 */
import { homePort } from '../../src/cli/home.ts';
import { openScreen } from '../../src/screen/shell/open-screen.tsx';
import { FakeHome } from '../helpers/screen/fake-ports.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';
import { HeadlessTerminal } from '../helpers/screen/mount.tsx';

const SIZE = { columns: 160, rows: 50 };
const WARM_UP = 60;
const KEYS = 600;

async function typed(terminal: HeadlessTerminal, name: string, keys: readonly string[], shows: (n: number) => string) {
	const times: number[] = [];
	let before = process.cpuUsage();
	for (let count = 0; count < WARM_UP + KEYS; count++) {
		if (count === WARM_UP) before = process.cpuUsage();
		const written = terminal.raw.length;
		const from = performance.now();
		terminal.type(keys[count % keys.length]!);
		await terminal.until(() => terminal.raw.length > written && terminal.text.includes(shows(count)));
		if (count >= WARM_UP) times.push(performance.now() - from);
	}
	const used = process.cpuUsage(before);
	return { name: `${name} at ${SIZE.columns}x${SIZE.rows}`, times, processor: (used.user + used.system) / 1000 / KEYS };
}

async function onSession() {
	const terminal = new HeadlessTerminal(SIZE);
	const sessions = [
		{ id: 'a', job: 'Rail', status: 'done', started: '2026-01-05 08:00', bendsDone: 3, bends: 3, fits: true } as const,
	];
	const port = new FakeHome(null, { sessions, story: keptSession() });
	const streams = { stdin: terminal.stdin, stdout: terminal.stdout, environment: { TERM: 'xterm-256color' } };
	const ended = openScreen({ ...streams, port });
	await terminal.until('Lately');
	terminal.type('1\r');
	await terminal.until('plots');
	terminal.type('8\r');
	await terminal.until('plot 1 of 5');
	const plots = await typed(terminal, 'a plot', ['6'], (n) => `plot ${((n + 1) % 5) + 1} of 5`);
	terminal.type('/6\r');
	await terminal.until('The tube, drawn and made');
	// There and back: no two views after one another look alike.
	terminal.type('8');
	const tube = await typed(terminal, 'a turned tube', ['6', '4'], () => 'The tube');
	terminal.type('/7\r');
	await terminal.until('As it began');
	const lines = await typed(terminal, 'line by line', ['6', '4'], (n) => (n % 2 === 0 ? 'Line 1 of' : 'As it began'));
	terminal.type('\x03');
	await ended;
	return [plots, tube, lines];
}

async function onList(home: string) {
	const terminal = new HeadlessTerminal(SIZE);
	const port = homePort({ home, rescue: null }, { own: home, samples: null }, false, () => ({
		mirror: false,
		from: 'start',
	}));
	const streams = { stdin: terminal.stdin, stdout: terminal.stdout, environment: { TERM: 'xterm-256color' } };
	const ended = openScreen({ ...streams, port });
	await terminal.until('look at a kept');
	terminal.type('look at a\r');
	await terminal.until('Kept sessions');
	terminal.type('rail bay');
	await terminal.until('Search: rail bay');
	const shows = (n: number) => (n % 2 === 0 ? 'rail bayx' : 'rail bay ');
	const keys = await typed(terminal, 'a letter among many', ['x', '\x7f'], shows);
	terminal.type('\x03');
	await ended;
	return keys;
}

process.stdout.write(JSON.stringify([...(await onSession()), await onList(process.argv[2]!)]));
