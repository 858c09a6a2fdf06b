import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { readSession, sessionPath } from '../../src/journal/catalogue.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { initial } from '../../src/session/log/fold.ts';
import { readBack, startIn } from '../../src/session/log/read-back.ts';
import { coldPrior, learnedPrior, type Start } from '../../src/session/log/start.ts';
import type { Lesson } from '../../src/springback/history.ts';
import { modelName } from '../../src/springback/model-name.ts';
import { journalWords } from '../../src/words/journal.ts';
import { lessonsKept } from '../helpers/session/lessons-kept.ts';

/** Two real logs of a program whose logs did not name their model: the first taught the second. */
const OLD = fileURLToPath(new URL('../fixtures/logs-of-another-model', import.meta.url));
const FIRST = '20260102-080000-old1';
const SECOND = '20260103-080100-old2';

const homes: string[] = [];
afterAll(() => {
	for (const home of homes) rmSync(home, { recursive: true });
});
function homeOfOld(): string {
	const home = mkdtempSync(join(tmpdir(), 'old-model-'));
	homes.push(home);
	mkdirSync(join(home, 'sessions'));
	cpSync(OLD, join(home, 'sessions'), { recursive: true });
	return home;
}
const world = (home: string) => ({
	home,
	program: 'test',
	now: () => new Date('2026-02-01T08:00:00Z'),
	random: () => 'x',
});
const startOf = (home: string, id: string): Start => startIn(readSession(home, id).first!);
const stateOf = (home: string, id: string) => readBack(readSession(home, id).records);
const begunBefore = (lessons: readonly Lesson[]) => (start: Start) => lessons.filter(({ at }) => at < start.at);

describe('a log whose prior is of another model', () => {
	it('is what these logs are: the second learned from the first, and neither names a model', () => {
		const home = homeOfOld();
		expect(startOf(home, SECOND).from?.exact.sessions).toBe(1);
		expect(startOf(home, SECOND).model).toBeUndefined();
	});

	it('counts as without history where it is only read, and nothing of its own prior is left', () => {
		const home = homeOfOld();
		const { start } = stateOf(home, SECOND);
		expect(start.prior).toEqual(coldPrior(start.job).prior);
		expect(start).toMatchObject({ model: modelName(), growth: startOf(home, SECOND).growth });
		expect(start.from).toBeUndefined();
	});

	it('teaches the same, whatever prior it was begun with', () => {
		const home = homeOfOld();
		const [kept] = lessonsKept(home);
		const records = readSession(home, SECOND).records;
		const other = { ...startOf(home, SECOND).prior, mean: [90, 90, 90, 90] };
		const begun = { ...records[0]!, start: { ...startOf(home, SECOND), prior: other } };
		expect(readBack([begun, ...records.slice(1)]).filter).toEqual(stateOf(home, SECOND).filter);
		expect(kept?.session).toBe(SECOND);
	});

	it('is gone on with by what the sessions before it teach anew, which is said once and kept', () => {
		const home = homeOfOld();
		const lessons = lessonsKept(home);
		const resumed = LiveSession.resume(world(home), SECOND, {}, [], begunBefore(lessons));
		const { start } = resumed.state;
		const wanted = learnedPrior(
			start.job,
			lessons.filter(({ session }) => session === FIRST),
		);
		expect(start.prior).toEqual(wanted.prior);
		expect(start.from?.exact.sessions).toBe(1);
		expect(resumed.notices.map(journalWords)).toEqual([
			'Pullbook now works out springback in another way than when this session began. Stops may differ: it learned again from the tubes before this one.',
		]);
		resumed.close();
		// Whoever reads the log from now on comes to the same.
		expect(stateOf(home, SECOND).filter).toEqual(resumed.state.filter);
		const again = LiveSession.resume(world(home), SECOND, {}, [], () => []);
		expect(again.notices).toEqual([]);
		expect(again.state.filter).toEqual(resumed.state.filter);
		again.close();
	});

	it('is gone on with as one without history where nothing is kept that teaches, and says so', () => {
		const home = homeOfOld();
		const resumed = LiveSession.resume(world(home), SECOND, {}, []);
		resumed.close();
		expect(resumed.state.start.prior).toEqual(coldPrior(resumed.state.start.job).prior);
		expect(resumed.notices.map(journalWords)[0]).toContain('what earlier tubes taught does not count here.');
	});

	it('keeps its pulls and readings, and the row that is left is the one its log gives', () => {
		const home = homeOfOld();
		const resumed = LiveSession.resume(world(home), SECOND, {}, [], begunBefore(lessonsKept(home)));
		resumed.leave();
		resumed.close();
		const row = (kept: SessionCache) => kept.read().rows.find(({ id }) => id === SECOND);
		const left = row(new SessionCache(home))?.lesson;
		rmSync(join(home, 'cache'), { recursive: true });
		expect(row(new SessionCache(home))?.lesson).toEqual(left);
		expect(resumed.state.bends[0]!.pulls.map(({ loaded }) => loaded)).toEqual(
			readFileSync(sessionPath(home, SECOND), 'utf8')
				.split('\n')
				.flatMap((line) => line.match(/"type":"reading-taken","reading":\{"of":"loaded","value":([\d.]+)/)?.[1] ?? [])
				.map(Number),
		);
	});
});

describe('a prior of this model', () => {
	it('is taken as it stands in the log', () => {
		const home = homeOfOld();
		const { job } = stateOf(home, SECOND).start;
		const file = { job, path: '/jobs/rail.json', raw: {} };
		const begun = LiveSession.begin(world(home), file, true, [], lessonsKept(home));
		begun.close();
		expect(startOf(home, begun.id).model).toBe(modelName());
		expect(stateOf(home, begun.id).start.prior).toEqual(begun.state.start.prior);
		expect(initial(begun.state.start).filter).toEqual(begun.state.filter);
	});
});
