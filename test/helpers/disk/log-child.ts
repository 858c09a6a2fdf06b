/**
 * A process of its own that writes a log, for the tests that kill it. `log-child PATH hold` takes the log and keeps it; `race` waits for
 * a line on standard input, tries to take it, and keeps it till the input ends; `write` appends without end. It says what it did, a line each.
 */
import { existsSync, writeSync } from 'node:fs';
import { Locked } from '../../../src/journal/errors.ts';
import { createLog, openLog } from '../../../src/journal/open-log.ts';
import type { LogRecord } from '../../../src/journal/record.ts';

const [path, what] = process.argv.slice(2) as [string, string];
const say = (text: string): number => writeSync(1, `${text}\n`);

function record(seq: number): LogRecord {
	return { seq, v: 1, at: new Date().toISOString(), text: 'x'.repeat((seq * 37) % 900) };
}

function write(): void {
	const log = existsSync(path)
		? openLog(path, { now: new Date() }).log
		: createLog(path, record(0), { now: new Date() });
	for (;;) {
		say(String(log.count - 1));
		log.append(record(log.count));
	}
}

function take(): void {
	try {
		openLog(path, { now: new Date() });
		say('taken');
	} catch (error) {
		if (!(error instanceof Locked)) throw error;
		say('locked');
	}
}

if (what === 'write') write();
else if (what === 'hold') take();
else process.stdin.once('data', take);
say('ready');
process.stdin.resume();
