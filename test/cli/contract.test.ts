import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../helpers/disk/program.ts';
import type { LineTalk } from '../helpers/shop/contract-client.ts';
import { bend, bendHere, Operator, question, railJob, Shop } from '../helpers/shop/contract-shop.ts';

const shop = new Shop();
let [file, home] = ['', ''];
beforeAll(() => {
	[file, home] = [shop.file(railJob()), shop.home()];
});
afterAll(() => shop.close());

const lines = (input: string, where = home) => runProgram(['bend', file, '--lines'], { home: where, input });
const kinds = (out: string) =>
	out
		.trim()
		.split('\n')
		.map((line) => JSON.parse(line).ask ?? JSON.parse(line).note);
const id = (talk: LineTalk) => talk.lines[0]?.id as string;

describe('how a session ends', () => {
	it.each([
		['the input ends', '', ['session', 'set'], 3],
		['quit', '{"quit":true}\n{"ready":true}\n', ['session', 'set'], 3],
		['scrap', '{"scrap":"it fell"}\n', ['session', 'set', 'done'], 0],
		['blank lines and carriage returns', '\r\n\n  \n{"ready":true}\r\n\r\n', ['session', 'set', 'pull'], 3],
		['a last line without newline', '{"ready":true}\n{"loaded":42}', ['session', 'set', 'pull', 'measure'], 3],
		['a bad answer', 'what\n', ['session', 'set', 'refused', 'set'], 3],
	])('%s', async (_, input, printed, code) => {
		const run = await lines(input, shop.home());
		expect([kinds(run.out), run.code]).toEqual([printed, code]);
	});

	it.each([
		['SIGTERM', 143],
		['SIGINT', 130],
		['SIGHUP', 129],
	] as const)('%s: what was answered is kept', async (signal, code) => {
		const where = shop.home();
		const talk = await bend(file, where);
		await talk.send({ ready: true });
		const open = talk.ask;
		expect(await talk.signal(signal)).toBe(code);
		const back = await bendHere(file, where, '--resume');
		expect(question(back.ask)).toEqual(question(open));
		expect(await back.end()).toBe(3);
	});

	it('closed output: left to be resumed, the answer kept', async () => {
		const where = shop.home();
		const talk = await bend(file, where);
		await talk.send({ ready: true });
		talk.closeOutput();
		talk.write('{"loaded":42}\n');
		expect(await talk.ended).toBe(3);
		const back = await bendHere(file, where, '--resume');
		expect(back.ask.ask).toBe('measure');
		await back.end();
	});

	it('a doubted reading is on disk before its confirm', async () => {
		const where = shop.home();
		const talk = await bend(file, where);
		await talk.send({ ready: true });
		await talk.send({ loaded: 70 });
		await talk.signal('SIGKILL');
		const back = await bendHere(file, where, '--resume');
		expect(question(back.ask)).toEqual(question(talk.ask));
		expect(back.ask).toMatchObject({ ask: 'confirm', of: 'loaded', reading: 70 });
		await back.end();
	});
});

describe('exit codes', () => {
	it('2 for a bad job, a bad option and nothing to resume', async () => {
		const broken = shop.file(railJob({ units: 'cubit' }));
		for (const args of [
			['bend', broken, '--lines'],
			['bend', `${file}.none`, '--lines'],
			['layout', broken, '--json'],
			['bend', file],
			['bend', file, '--frob'],
			['bend', file, '--lines', '--resume'],
			['bend', file, '--lines', '--resume', 'none'],
		]) {
			const run = await runProgram(args, { home: shop.home() });
			expect([args, run.code, run.out]).toEqual([args, 2, '']);
			expect(run.err).not.toContain('    at ');
		}
		expect((await runProgram(['bend', file], { home })).err).toContain('--lines');
	});

	it('4 for a session that another process writes; a new one may start beside it', async () => {
		const where = shop.home();
		const talk = await bend(file, where);
		await talk.send({ ready: true });
		for (const args of [['--resume'], ['--resume', id(talk)]]) {
			const second = await bend(file, where, ...args);
			expect(await second.end()).toBe(4);
			expect(second.lines).toEqual([]);
		}
		const beside = await bend(file, where);
		expect(beside.lines[0]).toMatchObject({ note: 'session', resumed: false, others: [id(talk)] });
		await beside.end();
		await talk.end();
	});

	it('5 where nothing can be written', async () => {
		const run = await lines('', '/proc/none');
		expect([run.code, run.out]).toEqual([5, '']);
	});

	it('6 for a damaged log, which stays as it is; a cut last line is none', async () => {
		const where = shop.home();
		const talk = await bend(file, where);
		await talk.send({ ready: true });
		await talk.end();
		const log = talk.lines[0]?.log as string;
		const whole = readFileSync(log, 'utf8');
		writeFileSync(log, `${whole}0123abcd {"seq":`);
		const cut = await bendHere(file, where, '--resume');
		expect(question(cut.ask)).toEqual(question(talk.ask));
		await cut.end();

		const damaged = whole.replace('"ready"', '"reedy"');
		writeFileSync(log, damaged);
		const back = await bendHere(file, where, '--resume', id(talk));
		expect(await back.end()).toBe(6);
		expect(back.lines).toEqual([]);
		expect(back.stderr).toContain(log);
		expect(readFileSync(log, 'utf8')).toBe(damaged);
		expect((await runProgram(['log', id(talk), '--json'], { home: where })).code).toBe(6);
	});
});

describe('resuming', () => {
	it('the job kept governs; `changed` says where the file differs now', async () => {
		const where = shop.home();
		const job = railJob() as { name: string; trim: object };
		const changing = shop.file(job);
		const talk = await bend(changing, where);
		await talk.send({ ready: true });
		await talk.end();
		writeFileSync(changing, JSON.stringify({ ...job, trim: { start: 2, end: 1 }, notes: 'new' }));
		const back = await bendHere(changing, where, '--resume');
		expect(back.lines[0]).toMatchObject({ note: 'session', resumed: true, id: id(talk) });
		expect(back.lines[0]?.changed).toEqual(['trim.start', 'notes']);
		expect(question(back.ask)).toEqual(question(talk.ask));
		await back.end();
		// Another path, the same name.
		const moved = await bend(shop.file(job), where, '--resume');
		expect(id(moved)).toBe(id(talk));
		await moved.end();
	});

	it('without an ID the unfinished session with the newest record; with one, also a done or scrapped one', async () => {
		const where = shop.home();
		const first = await bend(file, where);
		const second = await bend(file, where);
		await second.send({ ready: true });
		await second.end();
		await first.send({ ready: true });
		await first.end();
		const newest = await bend(file, where, '--resume');
		expect(id(newest)).toBe(id(first));
		expect(newest.lines[0]?.others).toEqual([id(second)]);
		await new Operator().play(newest);
		expect(await newest.end()).toBe(0);

		const done = await bend(file, where, '--resume', id(first));
		expect(done.ask).toMatchObject({ ask: 'decide', bend: 3 });
		await done.send({ undo: true });
		expect(done.ask).toMatchObject({ ask: 'decide', bend: 3 });
		const end = await done.send({ do: 'scrap', why: 'a dent' });
		expect(end.at(-1)).toMatchObject({ note: 'done', scrapped: true });
		expect(await done.end()).toBe(0);

		const listed = await runProgram(['log', '--json'], { home: where });
		expect(listed.code).toBe(0);
		const sessions: object[] = JSON.parse(listed.out);
		expect(sessions).toHaveLength(2);
		expect(Object.keys(sessions[0] ?? {})).toEqual(['id', 'job', 'status', 'started', 'bendsDone', 'bends', 'fits']);
		expect(sessions).toContainEqual(expect.objectContaining({ id: id(first), status: 'scrapped', bendsDone: 2 }));
		expect(sessions).toContainEqual(expect.objectContaining({ id: id(second), status: 'open', bendsDone: 0 }));
	});

	it('keeps its logs where it is told', async () => {
		const where = shop.home();
		const asked = await runProgram(['bend', file, '--lines', '--home', where], { home });
		expect(JSON.parse(asked.out.split('\n')[0] ?? '').log).toContain(where);
		const env = { PULLBOOK_HOME: '', XDG_DATA_HOME: where };
		const standard = await runProgram(['bend', file, '--lines'], { home, env });
		expect(JSON.parse(standard.out.split('\n')[0] ?? '').log).toContain(`${where}/pullbook/`);
	});
});
