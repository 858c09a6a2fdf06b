import { rmSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { cachePath } from '../../src/journal/kept-cache.ts';
import { SessionCache } from '../../src/journal/kept-sessions.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { newPieceOf, piecesOfJob } from '../../src/journal/pieces.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import { readBack } from '../../src/session/log/read-back.ts';
import { beginning, growthOf } from '../../src/session/log/start.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { lessonsKept } from '../helpers/session/lessons-kept.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';
import { tempFolder } from './child.ts';

const AS_DRAWN = { mirror: false, from: 'start' } as const;

describe('sessions on two dies', () => {
	it('of one batch are cut and marked alike, whatever was learned since', () => {
		const home = tempFolder();
		const job = twoDieJob({ tooling: { growth: null }, quantity: 3 });
		bendIn(home, { day: 1, job });
		const second = bendIn(home, { day: 2, job, lessons: lessonsKept(home) }).state.start;
		const file = { job, path: second.jobFile, raw: {} };
		const { rows } = new SessionCache(home).read();
		const piece = newPieceOf({ home }, piecesOfJob(rows, { path: file.path, name: job.name, as: AS_DRAWN }), job);
		const world = { home, program: 'test', now: () => new Date('2026-01-03T08:00:00Z'), random: () => 'ab12' };
		const third = LiveSession.begin(world, file, true, [], lessonsKept(home), piece);
		third.close();
		const { start } = third.state;
		expect(start.piece).toBe(3);
		// By what the second taught alone other radii would be expected.
		expect(start.dies!.tight!.from!.exact.sessions).toBe(2);
		expect(growthOf(beginning({ job }, lessonsKept(home)))).not.toEqual(growthOf(second));
		expect(growthOf(start)).toEqual(growthOf(second));
		expect(third.opening.find((output) => 'note' in output && output.note === 'session')).toMatchObject({
			alike: true,
		});
	});

	it('are kept with all that they taught of both, the same from the cache as folded', () => {
		const home = tempFolder();
		for (const day of [1, 2]) bendIn(home, { day, seed: day, job: twoDieJob() });
		const folded = [2, 1].map((day) => {
			const log = sessionPath(home, `2026010${day}-080000-ab12`);
			return lessonOf(readBack(readLog(log).records))!;
		});
		// As it was left, and as it is read again from what was kept.
		for (let n = 0; n < 2; n++) expect(lessonsKept(home)).toEqual(folded);
		rmSync(cachePath(home));
		for (let n = 0; n < 2; n++) expect(lessonsKept(home)).toEqual(folded);
		expect(folded).toHaveLength(2);
		for (const { kin, pulls, besides, vector, information } of folded) {
			expect([kin.die, ...besides!.map((each) => each.kin.die)]).toEqual(['tight', 'wide']);
			expect(pulls).toBeGreaterThanOrEqual(2);
			expect(besides![0]!.pulls).toBeGreaterThanOrEqual(2);
			expect([vector.length, information.length, information[9]!.length]).toEqual([10, 10, 10]);
		}
		const [row] = new SessionCache(home).read().rows;
		expect(row!.besides).toEqual(folded[0]!.besides);
	});
});
