import { listSessions, readSession } from '../journal/catalogue.ts';
import { listed, listText } from '../review/list.ts';
import { reviewText } from '../review/text.ts';
import { readBack } from '../session/read-back.ts';
import { sessionView } from '../session/views.ts';
import type { Io } from './io.ts';

const DAMAGED = 6;

/** Lists the kept sessions, or shows one. Exit code 0; 6 where a log is damaged: what can be read is shown all the same. */
export async function runLog(
	{ id, json, home }: { id: string | null; json: boolean; home: string },
	io: Io,
): Promise<number> {
	return id === null ? list(json, home, io) : show(id, json, home, io);
}

function list(json: boolean, home: string, { stdout, stderr }: Io): number {
	const sessions = listSessions(home).map(listed);
	const problems = sessions.flatMap((session) =>
		'problem' in session ? [`${session.kept.id}: ${session.problem}`] : [],
	);
	if (json) {
		const summaries = sessions.flatMap((session) => ('summary' in session ? [session.summary] : []));
		stdout.write(`${JSON.stringify(summaries, null, 2)}\n`);
		for (const problem of problems) stderr.write(`pullbook: ${problem}\n`);
	} else stdout.write(`${listText(sessions)}\n`);
	return problems.length > 0 ? DAMAGED : 0;
}

function show(id: string, json: boolean, home: string, { stdout, stderr }: Io): number {
	const kept = readSession(home, id);
	if (kept.records.length === 0) {
		stderr.write(`pullbook: ${kept.problem ?? `The log of session ${id} holds no record.`}\n`);
		return DAMAGED;
	}
	if (json) stdout.write(`${JSON.stringify(sessionView(readBack(kept.records)), null, 2)}\n`);
	else stdout.write(`${reviewText(kept)}\n`);
	if (kept.problem === null) return 0;
	stderr.write(`pullbook: ${kept.problem}\n`);
	return DAMAGED;
}
