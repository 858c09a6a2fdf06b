/** Sessions that are copied out of one home and into another on a disk that fails, and what must hold afterwards. */
import { sessionFolder, sessionPath } from '../../src/journal/catalogue.ts';
import { JournalError } from '../../src/journal/errors.ts';
import { exportSessions, importSessions } from '../../src/journal/exchange/exchange.ts';
import type { Copied } from '../../src/journal/exchange/facts.ts';
import { importMarkOf } from '../../src/journal/import-mark.ts';
import { encodeRecord, type LogRecord } from '../../src/journal/record.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { onlyProcess } from '../helpers/disk/only-process.ts';
import { must, type Subject } from './subject.ts';

const HERE = '/here';
const THERE = '/home';
const SHARED = '/shared';
const NOW = new Date('2026-01-02T08:00:00Z');

/** What was said to be copied into the folder, and into the other home; and the error that ended it. */
interface Left {
	shared: Copied[];
	there: Copied[];
	error: unknown;
}

/** Three sessions: one that is new, one of which the other home has a beginning, one that went on apart there. */
function logs(records: readonly LogRecord[]) {
	const lines = records.map((record) => encodeRecord(record));
	const [first] = records;
	const named = (id: string) => encodeRecord({ ...first, start: { ...(first?.start as object), id } });
	const bytes = (id: string, from: Buffer[]) => Buffer.concat([named(id), ...from.slice(1)]);
	const further = encodeRecord({ seq: 4, v: 1, at: NOW.toISOString(), events: [] });
	return {
		here: new Map(['new', 'longer', 'apart'].map((id) => [id, bytes(id, lines)])),
		there: new Map([
			['longer', bytes('longer', lines.slice(0, 3))],
			['apart', Buffer.concat([bytes('apart', lines.slice(0, 4)), further])],
		]),
	};
}

const options = (fs: FaultFs, pid: number) => ({ now: NOW, fs, self: onlyProcess(pid) });

export function exchangeSubject(records: readonly LogRecord[]): Subject<Left> {
	const { here, there } = logs(records);
	return {
		name: 'export and import',
		run: (fs) => copied(fs, here, there),
		check: (fs, left) => check(fs, left, here, there),
	};
}

function copied(fs: FaultFs, here: Map<string, Buffer>, there: Map<string, Buffer>): Left {
	for (const folder of [SHARED, HERE, sessionFolder(HERE), THERE, sessionFolder(THERE)]) fs.placeFolder(folder);
	for (const [id, bytes] of here) fs.place(sessionPath(HERE, id), bytes);
	for (const [id, bytes] of there) fs.place(sessionPath(THERE, id), bytes);
	const left: Left = { shared: [], there: [], error: null };
	try {
		left.shared = exportSessions(HERE, SHARED, options(fs, 1)).copied;
		left.there = importSessions(THERE, SHARED, options(fs, 2)).copied;
	} catch (error) {
		left.error = error;
	}
	return left;
}

/** Nothing lost of what was said to be copied, or was there before; no part of a log anywhere; and done again all is there, once, and marked. */
function check(fs: FaultFs, left: Left, here: Map<string, Buffer>, there: Map<string, Buffer>): void {
	const isOurs = left.error === null || left.error instanceof JournalError || left.error instanceof PowerCut;
	must(isOurs, `ended by ${left.error}`);
	for (const [folder, copied] of [
		[SHARED, left.shared],
		[sessionFolder(THERE), left.there],
	] as const) {
		for (const { id, how } of copied)
			must(stands(fs, folder, here.get(id)!), `lost: ${id}, which was ${how} in ${folder}`);
		for (const { path, bytes } of logsIn(fs, folder)) {
			const isKnown = [...here.values(), ...there.values()].some((known) => known.equals(bytes));
			must(isKnown, `a part of a log, or something else, stands in ${path}`);
		}
	}
	for (const [id, bytes] of there) must(stands(fs, sessionFolder(THERE), bytes), `lost: ${id}, which was there before`);
	exportSessions(HERE, SHARED, options(fs, 900));
	importSessions(THERE, SHARED, options(fs, 901));
	checkWhole(fs, here, there);
	const again = [exportSessions(HERE, SHARED, options(fs, 902)), importSessions(THERE, SHARED, options(fs, 903))];
	must(
		again.every(({ copied, left }) => left.length === 0 && copied.every(({ how }) => how === 'there')),
		'what was there already is copied again',
	);
}

function checkWhole(fs: FaultFs, here: Map<string, Buffer>, there: Map<string, Buffer>): void {
	const inShared = logsIn(fs, SHARED);
	const inHome = logsIn(fs, sessionFolder(THERE));
	must(inShared.length === here.size, `${inShared.length} logs lie in the folder, of ${here.size}`);
	must(inHome.length === here.size + 1, `${inHome.length} logs lie in the home, of ${here.size + 1}`);
	for (const bytes of here.values()) {
		must(
			inShared.some((log) => log.bytes.equals(bytes)),
			'the folder has not all',
		);
		must(
			inHome.some((log) => log.bytes.equals(bytes)),
			'the home has not all',
		);
	}
	must(
		inHome.some((log) => log.bytes.equals(there.get('apart')!)),
		'what had gone on apart is lost',
	);
	const marked = fs.files().filter((name) => name.endsWith('.imported'));
	must(marked.join() === MARKED.map((id) => importMarkOf(sessionPath(THERE, id))).join(), `marked: ${marked.join()}`);
}

/** What is new in the home; one that it had the beginning of was begun there. */
const MARKED = ['apart-2', 'new'];

const logsIn = (fs: FaultFs, folder: string): { path: string; bytes: Buffer }[] =>
	fs
		.files()
		.filter((path) => path.startsWith(`${folder}/`) && path.endsWith('.log'))
		.map((path) => ({ path, bytes: fs.readFileSync(path) }));

/** Whether some log in the folder begins with these bytes. */
const stands = (fs: FaultFs, folder: string, bytes: Buffer): boolean =>
	logsIn(fs, folder).some((log) => log.bytes.subarray(0, bytes.length).equals(bytes));
