import { spawn } from '@lydell/node-pty';

interface Started {
	/** Of Node. */
	args: readonly string[];
	cwd: string;
	/** Where the program keeps its things. */
	home: string;
	/** Typed ahead, as by one who knows what comes. */
	keys?: string;
	/** Longer than any start; only a program that hangs gets there. */
	giveUpMs: number;
}

/**
 * Milliseconds from the start of Node, in a real pseudo-terminal of 80 by 24, to any of `wanted` on the screen; null: to its end. What is timed
 * has gone when they are told, so that the next measurement has the machine.
 */
export function timeInTerminal(
	{ args, cwd, home, keys = '', giveUpMs }: Started,
	wanted: readonly string[] | null,
): Promise<number> {
	return new Promise((resolve, reject) => {
		const start = performance.now();
		const env = { ...process.env, PULLBOOK_HOME: home, TERM: 'xterm-256color', CI: 'false' };
		const terminal = spawn(process.execPath, [...args], { cwd, env, cols: 80, rows: 24 });
		let waiting = keys;
		let output = '';
		let taken: number | null = null;
		const timer = setTimeout(() => terminal.kill('SIGKILL'), giveUpMs);
		terminal.onData((data) => {
			output += data;
			// The program has taken over the keyboard as soon as it has taken over the screen.
			if (waiting !== '' && output.includes('1049h')) {
				terminal.write(waiting);
				waiting = '';
			}
			if (taken !== null || !wanted?.some((text) => output.includes(text))) return;
			taken = performance.now() - start;
			terminal.kill('SIGKILL');
		});
		terminal.onExit(() => {
			clearTimeout(timer);
			if (wanted === null) taken = performance.now() - start;
			if (taken !== null) resolve(taken);
			else reject(new Error(`${wanted?.join(' or ')} was not drawn: ${JSON.stringify(output.slice(-500))}`));
		});
	});
}
