// The program as others get it: packed from a clean checkout, and from that checkout by `npm install -g .`. Both must open their home screen in
// a folder of no jobs and print a sample job, with no package beside them.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { spawn } from '@lydell/node-pty';

const GIVE_UP_MS = 30_000;
const WANTED = 'This folder has no jobs yet';

const root = fileURLToPath(new URL('..', import.meta.url));
const work = mkdtempSync(join(tmpdir(), 'pullbook-installed-'));
const [checkout, empty] = ['checkout', 'empty'].map((name) => join(work, name));

const npm = (...args) =>
	execFileSync('npm', ['--loglevel=error', ...args], { cwd: checkout, stdio: ['ignore', 'ignore', 'inherit'] });

/** What the program at `path` draws first, in a folder of its own. */
function firstScreen(path) {
	return new Promise((resolve) => {
		const env = { ...process.env, PULLBOOK_HOME: join(work, 'home'), TERM: 'xterm-256color' };
		const pty = spawn(path, [], { cwd: empty, env, cols: 80, rows: 24 });
		const timer = setTimeout(() => pty.kill('SIGKILL'), GIVE_UP_MS);
		let shown = '';
		pty.onData((text) => {
			shown += text;
			if (shown.includes(WANTED)) pty.kill('SIGKILL');
		});
		pty.onExit(() => {
			clearTimeout(timer);
			resolve(shown);
		});
	});
}

/** Throws where the program at `path` does not print the shop sheet of a sample job. */
function print(path, name) {
	const out = join(work, `${name}.pdf`);
	const job = join(checkout, 'jobs', 'bow-rail.json');
	execFileSync(path, ['paper', job, '--out', out, '--home', join(work, 'home')], {
		cwd: empty,
		stdio: ['ignore', 'ignore', 'inherit'],
	});
	const bytes = readFileSync(out);
	if (!bytes.subarray(0, 5).equals(Buffer.from('%PDF-')) || !bytes.includes('DejaVuSans'))
		throw new Error(`What the ${name} program printed is no PDF with its font in it.`);
}

try {
	for (const folder of [checkout, empty]) mkdirSync(folder);
	const files = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], { cwd: root });
	for (const file of files.toString().split('\0').filter(Boolean)) cpSync(join(root, file), join(checkout, file));
	npm('pack', '--pack-destination', work);
	const packed = readdirSync(work).find((name) => name.endsWith('.tgz'));
	for (const [name, what] of [
		['packed', join(work, packed)],
		['linked', '.'],
	]) {
		npm('install', '--global', '--no-audit', '--no-fund', '--prefix', join(work, name), what);
		const shown = await firstScreen(join(work, name, 'bin', 'pullbook'));
		if (!shown.includes(WANTED))
			throw new Error(`The ${name} program drew no home screen, but ${JSON.stringify(shown.slice(-500))}`);
		print(join(work, name, 'bin', 'pullbook'), name);
		console.log(`The ${name} program opens in a folder without jobs, and prints.`);
	}
} finally {
	rmSync(work, { recursive: true, force: true });
}
