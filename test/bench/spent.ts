import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { spawn } from '@lydell/node-pty';

/** What a run of the program took, from the start of Node to its end. */
export interface Spent {
	/** Of the processor, the program's own and the system's for it. */
	milliseconds: number;
	/** The most memory that it had. */
	megabytes: number;
}

interface Run {
	/** Of Node. */
	args: readonly string[];
	cwd: string;
	/** Where the program keeps its things. */
	home: string;
	/** What is waited for on the screen, and what is typed then. A command that ends by itself has none. */
	steps?: readonly (readonly [wanted: string, keys: string])[];
	/** Longer than any run; only a program that hangs gets there. */
	giveUpMs: number;
}

/** A number of the processor says the same on a machine that is busy with other things, which no clock does. */
const TELLS = `import { writeFileSync } from 'node:fs';
process.on('exit', () => {
	const { user, system } = process.cpuUsage();
	const milliseconds = (user + system) / 1000;
	const megabytes = process.resourceUsage().maxRSS / 1024;
	writeFileSync(process.env.SPENT, JSON.stringify({ milliseconds, megabytes }));
});`;

/** Arguments of Node with which a process says on standard error, as it ends, what it took: `metered` reads that. */
export const METER = [
	'--import',
	'data:text/javascript,process.on("exit",()=>{const{userCPUTime,systemCPUTime,maxRSS}=process.resourceUsage();console.error("took",userCPUTime+systemCPUTime,maxRSS)})',
];

/** What a process with METER said that it took. @throws where it said nothing */
export function metered(stderr: string): Spent {
	const [, micros, kilobytes] = /^took (\d+) (\d+)$/m.exec(stderr) ?? [];
	if (micros === undefined || kilobytes === undefined) throw new Error(`No process told what it took: ${stderr}`);
	return { milliseconds: Number(micros) / 1000, megabytes: Number(kilobytes) / 1024 };
}

/** Runs the program in a real pseudo-terminal of 160 by 50. */
export function spentOn({ args, cwd, home, steps = [], giveUpMs }: Run): Promise<Spent> {
	const folder = mkdtempSync(join(tmpdir(), 'pullbook-spent-'));
	const [tells, told] = [join(folder, 'tells.mjs'), join(folder, 'told.json')];
	writeFileSync(tells, TELLS);
	return new Promise((resolve, reject) => {
		const env = { ...process.env, PULLBOOK_HOME: home, TERM: 'xterm-256color', CI: 'false', SPENT: told };
		const own = ['--import', pathToFileURL(tells).href, ...args];
		const terminal = spawn(process.execPath, own, { cwd, env, cols: 160, rows: 50 });
		const left = [...steps];
		let output = '';
		const timer = setTimeout(() => terminal.kill('SIGKILL'), giveUpMs);
		terminal.onData((data) => {
			output += data;
			const [next] = left;
			if (next === undefined || !output.includes(next[0])) return;
			left.shift();
			// What was drawn before is no answer to these keys.
			output = '';
			terminal.write(next[1]);
		});
		terminal.onExit(() => {
			clearTimeout(timer);
			try {
				if (left.length > 0) throw new Error(`${left[0]![0]} was not drawn: ${JSON.stringify(output.slice(-500))}`);
				resolve(JSON.parse(readFileSync(told, 'utf8')));
			} catch (error) {
				reject(error);
			} finally {
				rmSync(folder, { recursive: true, force: true });
			}
		});
	});
}
