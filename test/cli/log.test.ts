import fs, { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runLog } from '../../src/cli/log.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { openLog } from '../../src/journal/open-log.ts';
import { readLog } from '../../src/journal/read-log.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { reasonWords } from '../../src/words/reason.ts';
import { written } from '../helpers/cli/written.ts';
import { hatJob } from '../helpers/shop/hat.ts';

let home = '';
const zone = process.env.TZ;
beforeEach(() => {
	// Half an hour off the full hour, and no summer time.
	process.env.TZ = 'Asia/Kolkata';
	home = mkdtempSync(join(tmpdir(), 'pullbook-log-'));
});
afterEach(() => {
	if (zone === undefined) delete process.env.TZ;
	else process.env.TZ = zone;
	rmSync(home, { recursive: true, force: true });
});

async function run(id: string | null, json = false, terminal = {}) {
	const { io, kept } = written();
	Object.assign(io.stdout, terminal);
	const code = await runLog({ id, json, home }, io);
	return { code, ...kept };
}

function begin(day: number): LiveSession {
	let minute = 0;
	const now = () => new Date(Date.UTC(2026, 1, day, 8, minute++));
	return LiveSession.begin(
		{ home, program: 'test', now, random: () => 'ab12' },
		{ job: hatJob(), path: '/hat.json', raw: {} },
		false,
		[],
	);
}

/** Bends the whole tube, every stop kept to the dial and every reading as expected, pulling again where that is advised. */
function bendAll(session: LiveSession, see: (open: Ask) => void = () => {}): void {
	for (let open = session.ask, answers = 0; open; open = session.ask, answers++) {
		see(open);
		if (answers > 200) throw new Error(`The session does not come to its end: ${JSON.stringify(open)}`);
		if (open.ask === 'set') session.answerText('{"ready":true}');
		else if (open.ask === 'pull') session.answerText(JSON.stringify({ loaded: open.stop }));
		else if (open.ask === 'measure') session.answerText(JSON.stringify({ angle: open.expect.angle }));
		else if (open.ask === 'check') session.answerText(JSON.stringify({ reading: open.expect.value }));
		else if (open.ask === 'confirm') session.answerText('{"keep":true}');
		else session.answerText(JSON.stringify({ do: open.advice === 'pull' ? 'pull' : 'accept' }));
	}
	session.close();
}

/** A session left open at its first measure, one pull having been taken back and given anew, with a note. */
function leaveOpen(session: LiveSession): void {
	session.answerText('{"ready":true,"note":"first tube of the week"}');
	const stop = session.ask?.ask === 'pull' ? session.ask.stop : Number.NaN;
	session.answerText(JSON.stringify({ loaded: stop + 0.5 }));
	session.answerText('{"undo":true}');
	session.answerText(JSON.stringify({ loaded: stop }));
	session.close();
}

describe('pullbook log', () => {
	it('with nothing kept says how to begin', async () => {
		expect(await run(null)).toEqual({
			code: 0,
			out: 'No session has been kept yet. Start one: pullbook bend JOB\n',
			err: '',
		});
		expect(await run(null, true)).toEqual({ code: 0, out: '[]\n', err: '' });
	});

	it('lists newest first, how far each came and whether it fits', async () => {
		bendAll(begin(3));
		leaveOpen(begin(4));
		const { code, out } = await run(null);
		const [open, done] = out.split('\n');
		expect(code).toBe(0);
		expect(open).toBe('20260204-080000-ab12  interrupted  0 of 3 bends  Bow rail');
		expect(done).toMatch(/^20260203-080000-ab12 {2}finished {5}3 of 3 bends, (fits|does not fit) {2}Bow rail$/);
		const list = JSON.parse((await run(null, true)).out);
		expect(list).toMatchObject([
			{ id: '20260204-080000-ab12', status: 'open', bendsDone: 0, bends: 3, fits: null },
			{
				id: '20260203-080000-ab12',
				job: 'Bow rail',
				status: 'done',
				started: '2026-02-03T08:00:00.000Z',
				bendsDone: 3,
			},
		]);
		expect(list[1].fits).toBe(done?.includes(', fits'));
	});

	it('with a damaged log, an empty one and a good one: lists all, and the damage decides the exit code', async () => {
		leaveOpen(begin(3));
		fs.writeFileSync(sessionPath(home, '20260202-080000-zz'), '');
		expect(await run(null)).toMatchObject({ code: 0 });
		fs.writeFileSync(sessionPath(home, '20260201-080000-zz'), 'nonsense\n');
		const { code, out, err } = await run(null, true);
		expect(code).toBe(6);
		expect(JSON.parse(out)).toHaveLength(1);
		expect(err).toMatch(
			/20260202-080000-zz: The log .* holds no line.*\n.*20260201-080000-zz: The log .* is damaged in line 1/,
		);
	});
});

describe('pullbook log ID', () => {
	it('shows what was aimed at, given and taken back, in text and in JSON with the same numbers', async () => {
		const session = begin(3);
		leaveOpen(session);
		const { code, out } = await run(session.id);
		expect(code).toBe(0);
		const view = JSON.parse((await run(session.id, true)).out);
		expect(view).toMatchObject({ id: session.id, status: 'open', ended: null, notes: ['first tube of the week'] });
		const [undone, stood] = view.bends[0].pulls;
		expect(stood).toMatchObject({ seat: 1, loaded: stood.stop, released: null, measured: [], void: false });
		expect(undone).toMatchObject({ seat: 1, stop: stood.stop, loaded: stood.stop + 0.5, void: true });
		expect(out).toContain('interrupted: it can be resumed');
		expect(out).toContain(`set-up 1: stop ${stood.stop}°, held ${stood.loaded}°\n`);
		expect(out).toContain(`set-up 1: stop ${stood.stop}°, held ${undone.loaded}°  (taken back)`);
		expect(out).toContain('note: first tube of the week');
	});

	it('has the mark, the turn, the stop and the reason of every set-up and pull as they were asked for', async () => {
		const session = begin(3);
		const asked: Ask[] = [];
		bendAll(session, (open) => asked.push(open));
		const view = JSON.parse((await run(session.id, true)).out);
		const { out } = await run(session.id);
		const pulls = asked.filter((ask) => ask.ask === 'pull');
		const sets = asked.filter((ask) => ask.ask === 'set');
		type Told = { pulls: unknown[]; setUps: unknown[] };
		expect(view.bends.flatMap((bend: Told) => bend.pulls)).toHaveLength(pulls.length);
		expect(view.bends.flatMap((bend: Told) => bend.setUps)).toHaveLength(sets.length);
		for (const { bend, entry, stop, reason } of pulls) {
			const { mark, tubeTurn } = sets.findLast((set) => set.bend === bend && set.entry < entry)!;
			const told = view.bends[bend - 1].pulls.find((pull: { entry: number }) => pull.entry === entry);
			expect(told).toMatchObject({ mark, turn: tubeTurn, stop, why: reasonWords(reason, hatJob()), reason });
		}
		for (const { bend, entry, seat, mark, tubeTurn, rotation } of sets) {
			const told = view.bends[bend - 1].setUps.find((set: { entry: number }) => set.entry === entry);
			expect(told).toMatchObject({ seat, mark: { asked: mark, made: { fromStart: mark.fromStart } }, void: false });
			expect(told).toMatchObject({ rotation: { asked: rotation, made: rotation }, turn: { asked: tubeTurn } });
		}
		expect(out).toMatch(/^ {3}set-up 1: mark 16 in, no turn$/m);
		expect(out).toMatch(/^ {3}set-up 1: mark [\d/ ]+ in, turn 180° either way$/m);
	});

	it('says where the mark really was and how the tube was really turned, beside what was asked', async () => {
		const session = begin(3);
		session.answerText(JSON.stringify({ ready: true, mark: 16.0625, rotation: 0 }));
		session.close();
		const [bend] = JSON.parse((await run(session.id, true)).out).bends;
		expect(bend.setUps).toMatchObject([{ mark: { asked: { fromStart: 16 }, made: { fromStart: 16.0625 } } }]);
		expect((await run(session.id)).out).toContain('set-up 1: mark 16 in, no turn; really mark 16 1/16 in\n');
	});

	it('of a log of an earlier version tells the reason in the words it was given in', async () => {
		fs.mkdirSync(join(home, 'sessions'), { recursive: true });
		const kept = '20260102-080000-old1';
		fs.copyFileSync(join('test/fixtures/logs-of-another-model', `${kept}.log`), sessionPath(home, kept));
		const [bend] = JSON.parse((await run(kept, true)).out).bends;
		expect(bend.pulls[0].why).toMatch(/^Expect it to spring back 5\.3° to 27\.2°/);
		expect(bend.pulls[0]).toMatchObject({ mark: { fromStart: 16 }, turn: { way: 'none' } });
	});

	it('has times in UTC for programs, and by the clock on the wall for people', async () => {
		const session = begin(3);
		leaveOpen(session);
		expect(JSON.parse((await run(session.id, true)).out).started).toBe('2026-02-03T08:00:00.000Z');
		const { out } = await run(session.id);
		expect(out).toContain('\n2026-02-03 13:30 +05:30, interrupted: it can be resumed\n');
		expect(out).toContain('\nThe log, line by line (times at +05:30 from UTC):\n   1  13:31:00  tube set at bend 1');
	});

	it('takes the beginning of an id, or `last` for the newest', async () => {
		for (const day of [3, 4]) begin(day).close();
		expect((await run('20260203')).out).toContain('session 20260203-080000-ab12\n');
		expect((await run('last')).out).toContain('session 20260204-080000-ab12\n');
		await expect(run('202602')).rejects.toMatchObject({
			exitCode: 2,
			message:
				'2 sessions begin with "202602": 20260204-080000-ab12, 20260203-080000-ab12. Write more of the one you mean.',
		});
		// One whose whole id is the beginning of another's is meant itself.
		fs.copyFileSync(sessionPath(home, '20260203-080000-ab12'), sessionPath(home, '20260203-080000-ab12-2'));
		expect((await run('20260203-080000-ab12')).code).toBe(0);
	});

	it('`last` with nothing kept, or a beginning of nothing, exits 2', async () => {
		expect(await run('2031')).toMatchObject({ code: 2, out: '' });
		await expect(run('last')).rejects.toMatchObject({
			exitCode: 2,
			message: 'No session has been kept yet. Start one: pullbook bend JOB',
		});
	});

	it('`last` is none that a wrong clock has dated in the future, unless nothing else is kept', async () => {
		const sound = begin(3);
		sound.close();
		const ahead = '20991231-080000-ab12';
		fs.copyFileSync(sessionPath(home, sound.id), sessionPath(home, ahead));
		expect((await run('last')).out).toContain(`session ${sound.id}\n`);
		fs.rmSync(sessionPath(home, sound.id));
		expect((await run('last')).code).toBe(0);
	});

	it.each([
		[80, {}],
		[80, { isTTY: true, columns: 0 }],
		[60, { isTTY: true, columns: 60 }],
		[200, { isTTY: true, columns: 200 }],
	])('breaks its lines between words at %i columns: %o', async (columns, terminal) => {
		const session = begin(3);
		session.answerText(JSON.stringify({ ready: true, note: 'a kink beside the seam '.repeat(9).trim() }));
		session.close();
		const { out } = await run(session.id, false, terminal);
		const widest = Math.max(...out.split('\n').map((line) => line.length));
		expect(widest).toBeLessThanOrEqual(columns);
		expect(widest).toBeGreaterThan(columns - 20);
		expect(out.replace(/\s+/g, ' ')).toContain('a kink beside the seam '.repeat(9).trim());
	});

	it('of a finished one tells the end and each check as the session itself did', async () => {
		const session = begin(3);
		bendAll(session);
		const view = JSON.parse((await run(session.id, true)).out);
		const { records } = readLog(sessionPath(home, session.id));
		expect(view).toMatchObject({ status: 'done', ended: records.at(-1)!.at });
		expect(view.events).toBe(records.slice(1).reduce((sum, { events }) => sum + (events as unknown[]).length, 0));
		expect(view.checks.map((check: { reading: number }) => check.reading)).not.toContain(null);
		const { out } = await run(session.id);
		expect(out).toMatch(/^Check crown: read [\d/ ]+ in; drawing [\d/ ]+ in, within 1\/16 in$/m);
		expect(out).toMatch(
			/Far end .* from its place, .* from its direction\.\nGive or take .* in and .*°?\. The tube (fits|may fit|does not fit): /,
		);
	});

	it('of a scrapped one tells why, and not how far off a tube is that is none', async () => {
		const session = begin(3);
		session.answerText('{"scrap":"cracked at the weld"}');
		session.close();
		const { out } = await run(session.id);
		expect(out).toContain('2026-02-03 13:30 +05:30, scrapped\n');
		expect(out).toContain('\nThe tube was scrapped: cracked at the weld.\n');
		expect(out).not.toContain('Far end');
		expect((await run(null)).out).toBe(`${session.id}  scrapped     0 of 3 bends  Bow rail\n`);
	});

	it('of a damaged log shows what is before the damage, says where it is, and exits 6', async () => {
		const session = begin(3);
		leaveOpen(session);
		const path = sessionPath(home, session.id);
		const bytes = fs.readFileSync(path);
		bytes[bytes.length - 3]! ^= 1;
		fs.writeFileSync(path, bytes);
		const { code, out, err } = await run(session.id);
		expect(code).toBe(6);
		expect(err).toMatch(/is damaged in line 5: its checksum does not match/);
		expect(out).toContain('CAUTION');
		expect(out).not.toContain('can be resumed');
		expect(out).toContain('2026-02-03 13:30 +05:30, not ended as far as it can be read\n');
		expect(out).toContain('tube set at bend 1');
		expect(fs.readFileSync(path)).toEqual(bytes);
	});

	it('of one that went on on a disk which is away shows what is left here, and says where the rest is', async () => {
		const session = begin(3);
		leaveOpen(session);
		const { log } = openLog(sessionPath(home, session.id), { now: new Date() });
		log.rescue(join(home, 'stick'));
		const { path } = log;
		log.close();
		rmSync(dirname(path), { recursive: true });
		const { code, out, err } = await run(session.id);
		expect(code).toBe(0);
		expect(err).toMatch(/went on in .*stick.*Put that disk back/);
		expect(out).toContain('tube set at bend 1');
	});

	it('with an event that this version does not know refuses, and skips nothing', async () => {
		const session = begin(3);
		session.close();
		const strange = { seq: 1, v: 1, at: '2026-02-03T09:00:00.000Z', events: [{ type: 'tube-painted' }] };
		fs.appendFileSync(sessionPath(home, session.id), encodeRecord(strange));
		await expect(run(session.id)).rejects.toMatchObject({
			exitCode: 6,
			fact: { code: 'unknown-line', line: 1, holds: { event: 'tube-painted' } },
		});
		expect(await run(null)).toMatchObject({ code: 6 });
	});

	it('with a line of ours in a form that no version wrote refuses, whatever its checksum says', async () => {
		const session = begin(3);
		session.close();
		const strange = { seq: 1, v: 1, at: '2026-02-03T09:00:00.000Z', events: [{ type: 'tube-set', bend: 'one' }] };
		fs.appendFileSync(sessionPath(home, session.id), encodeRecord(strange));
		await expect(run(session.id)).rejects.toMatchObject({
			exitCode: 6,
			fact: { line: 1, holds: { part: 'tube-set' } },
		});
		expect((await run(null)).out).toContain('Line 1 of the log holds the event "tube-set" in an odd form');
	});

	it('of an id that is not there, or none, says so with exit 2', async () => {
		expect(await run('20260203-080000-none')).toMatchObject({
			code: 2,
			out: '',
			err: expect.stringMatching(/There is no log .*: pullbook log lists those that are kept/),
		});
		await expect(run('../secret')).rejects.toMatchObject({ exitCode: 2 });
	});
});
