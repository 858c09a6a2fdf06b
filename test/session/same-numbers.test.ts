import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sample } from '../helpers/sample-size.ts';
import { type Recorded, replayed, SESSIONS } from '../helpers/session/recorded-sessions.ts';

const ALL = readFileSync(join(SESSIONS, 'recorded.jsonl'), 'utf8')
	.trimEnd()
	.split('\n')
	.map((line) => JSON.parse(line) as Recorded);

/** All of them take a minute and a half. */
const EVERY = sample(21, 1);

/** `PULLBOOK_SESSIONS=write` keeps what they give now, for whoever changes on purpose what is asked: `git diff --stat` tells how many lines that is. */
if (process.env.PULLBOOK_SESSIONS === 'write') {
	for (const session of ALL) session.digests = replayed(session);
	writeFileSync(join(SESSIONS, 'recorded.jsonl'), ALL.map((session) => `${JSON.stringify(session)}\n`).join(''));
}

describe('whole sessions answered as they once were', () => {
	it('are of every sample, and hundreds', () => {
		expect(new Set(ALL.map(({ job }) => job)).size).toBe(7);
		expect(ALL.length).toBeGreaterThanOrEqual(300);
	});

	it.each(ALL.map((session, i) => [i, session] as const).filter(([i]) => i % EVERY === 0))(
		'number %i asks and tells the same numbers',
		(_, session) => {
			expect(replayed(session)).toEqual(session.digests);
		},
	);
});
