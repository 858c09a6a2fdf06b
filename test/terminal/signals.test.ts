import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { constants, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { watchSignals } from '../../src/terminal/signals.ts';
import { builtApp } from '../helpers/screen/built-app.ts';
import { Pty, type PtyOptions } from '../helpers/screen/pty.ts';

const { app, remove } = await builtApp();
const folder = mkdtempSync(join(tmpdir(), 'signals-'));
const answers = join(folder, 'answers.json');
const running: Pty[] = [];

function started(file: string, args: string[], options: PtyOptions = {}): Pty {
	const pty = new Pty(file, args, options);
	running.push(pty);
	return pty;
}

/** A shell of which the program is a job. What it prints itself is told from what was typed by the brackets. */
async function shell(options: PtyOptions = {}): Promise<Pty> {
	const pty = started('bash', ['--norc', '--noprofile', '-i'], { ...options, env: { PS1: 'ready> ', ...options.env } });
	await pty.until('ready>');
	pty.write('echo before-it\r');
	await pty.until(/^before-it$/m);
	pty.write(`${process.execPath} ${app} ${answers}; echo "[$?]"\r`);
	await pty.until('Measure the bend');
	return pty;
}

afterEach(() => {
	for (const pty of running.splice(0)) pty.kill();
});
afterAll(() => {
	rmSync(folder, { recursive: true });
	remove();
});

test.each(['SIGABRT', 'SIGUSR2', 'SIGALRM', 'SIGXCPU', 'SIGXFSZ', 'SIGVTALRM'] as const)(
	'%s is heard too',
	(signal) => {
		const before = process.listenerCount(signal);
		const codes: number[] = [];
		const unwatch = watchSignals({ end: (code) => codes.push(code), goOn: () => {} });
		process.listeners(signal).at(-1)!(signal);
		expect(codes).toEqual([128 + constants.signals[signal]]);
		unwatch();
		expect(process.listenerCount(signal)).toBe(before);
	},
);

describe('in a real pseudo-terminal', { timeout: 120_000 }, () => {
	test.each([
		['SIGTERM', 143],
		['SIGINT', 130],
		['SIGHUP', 129],
		['SIGQUIT', 131],
	])('%s ends the program with %i and gives the screen back', async (signal, code) => {
		const pty = await shell();
		expect(pty.alternate).toBe(true);
		pty.write('12');
		await pty.until('> 12');
		process.kill(pidOf(pty), signal);
		await pty.until(`[${code}]`);
		expect(pty.alternate).toBe(false);
		expect(pty.text).toContain('before-it');
		expect(pty.raw).not.toContain('\x1b[3J');
		// The shell would not echo if raw mode had stayed on.
		pty.write('echo still-echoing\r');
		await pty.until(/ready> echo still-echoing\nstill-echoing/);
	});

	test('Ctrl-Z gives the terminal to the shell, fg brings the program back with what was typed', async () => {
		const pty = await shell();
		pty.write('12');
		await pty.until('> 12');
		pty.write('\x1a');
		await pty.until(/Stopped/);
		expect(pty.alternate).toBe(false);
		pty.write('fg; echo "[$?]"\r');
		await pty.until('> 12');
		expect(pty.alternate).toBe(true);
		pty.write('.5\n');
		await pty.until('Saved as line 1:');
		pty.write('\x03');
		await pty.until('[130]');
	});

	test('stopped and continued from outside it draws itself anew', async () => {
		const pty = await shell();
		const pid = pidOf(pty);
		process.kill(pid, 'SIGSTOP');
		await pty.until(/Stopped/);
		pty.write('clear; fg\r');
		await pty.until((screen) => screen.includes('Measure the bend') && !screen.includes('Stopped'));
		pty.write('47.9\r');
		await pty.until('Saved as line 1:');
	});

	test('a terminal of 0 by 0 is drawn on', async () => {
		const pty = started('bash', ['-c', `stty rows 0 cols 0; exec ${process.execPath} ${app} ${answers}`]);
		await pty.until(/^Measure the bend +Aft arch · bend 2 of 4$/m);
		pty.write('47.9\r');
		await pty.until('Saved as line 1:');
	});

	test('closing the window ends the program', async () => {
		const pty = started(process.execPath, [app, answers]);
		await pty.until('Measure the bend');
		pty.kill('SIGHUP');
		expect(await pty.ended).toEqual({ exitCode: 129, signal: 0 });
	});
});

/** The program's own process: the youngest child of the shell. */
function pidOf(pty: Pty): number {
	const children = readFileSync(`/proc/${pty.pid}/task/${pty.pid}/children`, 'utf8').trim().split(' ');
	return Number(children.at(-1));
}
