import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { bentAsIn } from '../../src/cli/hand-and-end.ts';
import { runLog } from '../../src/cli/log.ts';
import type { SetAsk } from '../../src/session/protocol/asks.ts';
import type { SessionNote } from '../../src/session/protocol/notes.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';

let home = '';
let file = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-hand-'));
	file = join(home, 'job.json');
	const job = {
		pullbook: 'job/1',
		name: 'Davit brace',
		units: 'in',
		tube: { material: '1020-dom', od: 1.5, wall: 0.095 },
		tooling: { clr: 6, growth: 1 },
		shape: {
			bends: [
				{ straight: 12, angle: 40, rotation: 0 },
				{ straight: 9, angle: 30, rotation: 75 },
				{ straight: 10, angle: 20, rotation: -110 },
			],
			last: 15,
		},
		trim: { start: 1, end: 2 },
	};
	writeFileSync(file, JSON.stringify(job));
});
afterAll(() => rmSync(home, { recursive: true }));

const asGiven = (...argv: string[]) => bentAsIn(readCommandLine(argv));

describe('the options for the hand and the end', () => {
	it.each(['layout', 'bend', 'practice'])('are taken by %s', (command) => {
		expect(asGiven(command, 'a.json')).toEqual({ mirror: false, from: 'start' });
		expect(asGiven(command, 'a.json', '--mirror')).toEqual({ mirror: true, from: 'start' });
		expect(asGiven(command, 'a.json', '--from', 'far')).toEqual({ mirror: false, from: 'far' });
		expect(asGiven(command, 'a.json', '--from=start', '--mirror')).toEqual({ mirror: true, from: 'start' });
	});

	it('are refused for an end that is none, and where a session goes on', () => {
		expect(() => asGiven('layout', 'a.json', '--from', 'left')).toThrow('--from is start or far');
		expect(() => asGiven('layout', 'a.json', '--from')).toThrow('--from needs a value');
		expect(() => asGiven('bend', 'a.json', '--resume', '--mirror')).toThrow('keeps the hand and the end');
	});
});

describe('a session of the opposite part, begun at the far end', () => {
	it('is bent as that, says so in its record, and is still that when it goes on', async () => {
		const begun = await runLineMode({ file, home, as: { mirror: true, from: 'far' } }, (ask) =>
			ask.ask === 'set' ? { ready: true } : null,
		);
		const [session] = begun.outputs as [SessionNote];
		const set = begun.outputs.find((output): output is SetAsk => 'ask' in output && output.ask === 'set')!;
		expect(session.bentAs).toEqual({ mirror: true, from: 'far' });
		expect(set).toMatchObject({ bend: 1, target: 20, mark: { fromStart: 17 } });
		expect(set.cautions).toContainEqual(expect.stringContaining("The opposite part: the drawing's mirror image."));
		const { start } = JSON.parse(
			readFileSync(session.log, 'utf8')
				.split('\n')[0]!
				.replace(/^[^{]*/, ''),
		) as {
			start: { job: { shape: { bends: { rotation: number }[] } } };
		};
		expect(start.job).toMatchObject({ bentAs: { mirror: true, from: 'far' }, trim: { start: 2, end: 1 } });
		expect(start.job.shape.bends.map((bend) => bend.rotation)).toEqual([0, 110, -75]);

		const resumed = await runLineMode({ file, home, resume: true }, () => null);
		const [again] = resumed.outputs as [SessionNote];
		// The file is what it was: bending it otherwise is no change of the job.
		expect(again).toMatchObject({ id: session.id, resumed: true, changed: [], bentAs: { mirror: true, from: 'far' } });
		expect(resumed.outputs.at(-1)).toMatchObject({ ask: 'pull', bend: 1, target: 20 });

		let out = '';
		const write = (text: string) => {
			out += text;
			return true;
		};
		const streams = { stdout: { write }, stderr: { write } } as unknown as Parameters<typeof runLog>[1];
		await runLog({ id: session.id, json: true, home }, streams);
		expect(JSON.parse(out)).toMatchObject({ bentAs: { mirror: true, from: 'far' }, job: { name: 'Davit brace' } });
		out = '';
		await runLog({ id: session.id, json: false, home }, streams);
		expect(out).toContain("Begun at the drawing's far end");
	});
});
