import fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readSession, sessionFolder } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { change, plainJobFile } from '../helpers/disk/job-file.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { runHere } from '../helpers/disk/run-here.ts';

let folder = '';
let home = '';
let file = '';
beforeEach(() => {
	folder = fs.mkdtempSync(join(tmpdir(), 'pullbook-rescue-'));
	home = join(folder, 'home');
	file = join(folder, 'bar.json');
	fs.writeFileSync(file, JSON.stringify(change(plainJobFile(), 'name', 'Fender bar')));
});
afterEach(() => fs.rmSync(folder, { recursive: true, force: true }));

const notes = (outputs: readonly object[], note: string) =>
	outputs.filter((output) => 'note' in output && output.note === note);

/** Answers as they come: the tube set, then a note a time. Before answer number `at` something happens to the disk. */
function answering(at: number, happens: () => void, last: number): (ask: Ask) => unknown {
	let answers = 0;
	return () => {
		answers++;
		if (answers === at) happens();
		if (answers > last) return { quit: true };
		return { note: `answer ${answers}` };
	};
}

describe('a session whose disk refuses in the middle', () => {
	const lose = () => fs.rmSync(sessionFolder(home), { recursive: true });

	it('without another place to go on: the answer is refused as not saved, and the exit code is 5', async () => {
		const run = await runLineMode({ file, home }, answering(3, lose, 9));
		expect(run.code).toBe(5);
		expect(notes(run.outputs, 'refused')).toMatchObject([
			{ code: 'not-saved', why: expect.stringMatching(/This reading is not saved\..*3 lines before it are safe/) },
		]);
		expect(fs.existsSync(join(tmpdir(), 'pullbook-rescued'))).toBe(false);
	});

	it('with --rescue goes on there, and resuming brings every line back into the home', async () => {
		const rescue = join(folder, 'stick');
		const run = await runLineMode({ file, home, rescue }, answering(3, lose, 5));
		expect(run.code).toBe(3);
		expect(run.stderr).toContain(`The session goes on in ${join(rescue, '')}`);
		const id = fs.readdirSync(rescue)[0]!.replace(/\.log$/, '');
		expect(readSession(home, id).path).toBe(join(rescue, `${id}.log`));
		expect(fs.statSync(rescue).mode & 0o777).toBe(0o700);
		const again = await runLineMode({ file, home, resume: true }, () => ({ quit: true }));
		expect(again.stderr).toContain('are in the log again');
		const { path, records } = readSession(home, id);
		expect(path).toBe(join(sessionFolder(home), `${id}.log`));
		const written = records.flatMap(({ events }) =>
			((events ?? []) as { type: string; text?: string }[]).flatMap(({ text }) => text ?? []),
		);
		expect(written).toEqual([1, 2, 3, 4, 5].map((n) => `answer ${n}`));
	});

	it('in a folder that its home could not be told of is listed and shown where that is named', async () => {
		const stick = join(folder, 'stick');
		const run = await runLineMode({ file, home, rescue: stick }, answering(3, lose, 5));
		expect(run.code).toBe(3);
		fs.rmSync(sessionFolder(home), { recursive: true });
		const id = fs.readdirSync(stick)[0]!.replace(/\.log$/, '');
		const list = await runHere(['log', '--rescue', stick], { home });
		expect(list).toMatchObject({ code: 0, out: expect.stringContaining(`${id}  interrupted`) });
		const shown = await runHere(['log', 'last', '--rescue', stick], { home });
		expect(shown).toMatchObject({ code: 0, out: expect.stringContaining('answer 5') });
		const all = await runHere(['log', 'verify', '--rescue', stick], { home });
		expect(all).toMatchObject({ code: 2, err: expect.stringContaining('Leave out --rescue') });
	});

	it('a link planted under the name is not followed', async () => {
		const rescue = join(folder, 'stick');
		fs.mkdirSync(rescue);
		const target = join(folder, 'elsewhere');
		const plant = () => {
			const name = fs.readdirSync(sessionFolder(home)).find((each) => each.endsWith('.log'))!;
			fs.symlinkSync(target, join(rescue, name));
			lose();
		};
		const run = await runLineMode({ file, home, rescue }, answering(3, plant, 4));
		expect(run.code).toBe(3);
		expect(fs.existsSync(target)).toBe(false);
		expect(fs.readdirSync(rescue).filter((name) => /-2\.log$/.test(name))).toHaveLength(1);
	});

	it('quitting needs no disk: nothing is rescued for it', async () => {
		const rescue = join(folder, 'stick');
		const run = await runLineMode({ file, home, rescue: null }, answering(3, lose, 2));
		expect(run.code).toBe(3);
		expect(run.stderr).toContain('Only that you left is not.');
		expect(fs.existsSync(rescue)).toBe(false);
	});
});

describe('a session that another one resumed meanwhile', () => {
	it('ends with exit code 4, adds nothing and leaves no file', async () => {
		const rescue = join(folder, 'stick');
		let id = '';
		const overtake = () => {
			const lock = fs.readdirSync(sessionFolder(home)).find((name) => name.endsWith('.lock'))!;
			id = lock.replace(/\.log\.lock$/, '');
			fs.rmSync(join(sessionFolder(home), lock));
			const world = { home, program: 'test', now: () => new Date(), random: () => 'ab12' };
			const second = LiveSession.resume(world, id, {}, []);
			second.answerText('{"scrap":"kinked"}');
			second.close();
		};
		await expect(runLineMode({ file, home, rescue }, answering(3, overtake, 9))).rejects.toMatchObject({ exitCode: 4 });
		expect(readSession(home, id)).toMatchObject({ problem: null, damage: null });
		expect(JSON.stringify(readSession(home, id).last)).toContain('kinked');
		expect(fs.existsSync(rescue)).toBe(false);
		expect(fs.readdirSync(sessionFolder(home))).toEqual([`${id}.log`]);
	});
});

describe('a damaged first line', () => {
	it('of the newest log is never passed over for an older session', async () => {
		for (const _ of [1, 2])
			await runLineMode(
				{ file, home },
				answering(0, () => {}, 1),
			);
		const logs = fs.readdirSync(sessionFolder(home)).filter((name) => name.endsWith('.log'));
		const paths = logs.map((name) => join(sessionFolder(home), name));
		const byTime = paths.sort((a, b) => lastAt(a).localeCompare(lastAt(b)));
		const whole = fs.readFileSync(byTime[1]!);
		const bad = Buffer.from(whole);
		bad[20]! ^= 1;
		fs.writeFileSync(byTime[1]!, bad);
		await expect(runLineMode({ file, home, resume: true }, () => ({ quit: true }))).rejects.toMatchObject({
			exitCode: 6,
			fact: { code: 'log-damaged', line: 1, log: byTime[1] },
		});
		// The older one is resumed where it is named, and once it is the newer one.
		fs.writeFileSync(byTime[1]!, whole);
		const old = Buffer.from(fs.readFileSync(byTime[0]!));
		old[20]! ^= 1;
		fs.writeFileSync(byTime[0]!, old);
		expect((await runLineMode({ file, home, resume: true }, () => ({ quit: true }))).code).toBe(3);
	});
});

function lastAt(path: string): string {
	const times = [...fs.readFileSync(path, 'utf8').matchAll(/"v":1,"at":"([^"]+)"/g)].map(([, at]) => at!);
	return times.at(-1) ?? '';
}
