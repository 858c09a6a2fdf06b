/** Whole sessions, bent by the simulated operator: their records as they stand in a log. */
import { readSession } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import type { LogRecord } from '../../src/journal/record.ts';
import { FaultFs } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { newMachine } from '../helpers/shop/plain-shop.ts';

/** Bends a tube on a machine of that seed, to its end or for so many answers, and gives the log's records. */
export function sessionRecords(seed: number, answers: number): LogRecord[] {
	const fs = new FaultFs();
	let minute = 0;
	const now = () => new Date(Date.UTC(2026, 0, 1, 8, minute++));
	const world = { home: '/home', program: 'test', now, random: () => 'ab12', fs, self: onlyProcess(1) };
	const session = LiveSession.begin(world, { job: plainJob(), path: '/none.json', raw: {} }, false, []);
	const operator = operatorAt(newMachine(seed));
	for (let n = 0; n < answers && session.ask !== null; n++)
		session.answerText(JSON.stringify(operator.answer(session.ask)));
	session.close();
	return readSession('/home', session.id, fs).records;
}
