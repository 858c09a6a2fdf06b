import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { practicePort } from '../../src/cli/practice-port.ts';
import { listSessions } from '../../src/journal/catalogue.ts';
import { beginPractice, playedOut, practiceHome } from '../../src/practice/practice.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { knownOf } from '../../src/session/log/start.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'practice-batch-'));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function worldOf(day: number) {
	let minute = 0;
	const now = () => new Date(Date.UTC(2026, 0, day, 8, minute++));
	return { home, program: 'test', now, random: () => `${minute}`.padStart(8, '0') };
}

it('a practice of several pieces bends one after the other on one bender, which each tube teaches', async () => {
	const bends = [
		{ straight: 10, angle: 70, rotation: 0, die: 'tight' },
		{ straight: 14, angle: 25, rotation: 180 },
	];
	const job = twoDieJob({ quantity: 3, shape: { kind: 'bends', bends, last: 11 } });
	const file = { job, path: join(home, 'rail.json'), raw: {} };
	// Of another practice, on another bender: none of these pieces.
	beginPractice(file, USUAL_SHOP, 920_100, worldOf(1)).session.close();
	const about = worldOf(2);
	const port = practicePort(beginPractice(file, USUAL_SHOP, 920_101, about), file, about);
	const made: number[][] = [];
	let live = await port.openSession(file.path, false);
	for (let piece = 1; piece <= 3; piece++) {
		const { session, station } = port.now();
		const { start } = session.state;
		expect([start.piece, knownOf(start, 1)!.exact.sessions, knownOf(start, 2)!.exact.sessions]).toEqual([
			piece,
			piece - 1,
			piece - 1,
		]);
		for (const _ of playedOut(port.now(), gaveUpWords));
		made.push([...station.trueAngles]);
		const { pieces, next } = live.batch!()!;
		expect([pieces.made, pieces.wanted]).toEqual([piece, 3]);
		expect(next).toEqual(piece < 3 ? { do: 'begin', piece: piece + 1 } : null);
		live.close();
		if (piece < 3) live = await port.another!(live.id);
	}
	// Another tube each time.
	expect(new Set(made.map(String)).size).toBe(3);
	expect(listSessions(practiceHome(home))).toHaveLength(4);
	expect(listSessions(home)).toEqual([]);
});
