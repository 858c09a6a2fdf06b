import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLog } from '../../src/journal/read-log.ts';
import { startIn } from '../../src/session/log/read-back.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { DoneNote, Output, SessionNote } from '../../src/session/protocol/notes.ts';
import { asLine } from '../../src/words/line-mode.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { sample } from '../helpers/sample-size.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { draws, newMachine } from '../helpers/shop/plain-shop.ts';

const RUNS = sample(12, 150);
let folder = '';
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'cold-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function jobFile(seed: number): string {
	const draw = draws(40_000 + seed);
	const bends = [0, 90, 180].map((rotation) => ({ straight: 20, angle: draw.uniform(30, 120), rotation }));
	const path = join(folder, `job-${seed}.json`);
	const job = {
		pullbook: 'job/1',
		name: `Cold ${seed}`,
		units: 'in',
		tube: { material: '1020-dom', od: 1.5, wall: 0.095 },
		tooling: { clr: 6 },
		shape: { bends, last: 20 },
	};
	writeFileSync(path, JSON.stringify(job));
	return path;
}

describe('the line mode against a simulated operator, nothing learned before', () => {
	it(`carries ${RUNS} three-bend jobs to their end: few pulls, few over, every answer kept`, {
		timeout: 300_000,
	}, async () => {
		let [bends, pulls, over, within] = [0, 0, 0, 0];
		for (let seed = 0; seed < RUNS; seed++) {
			const operator = operatorAt(newMachine(70_000 + seed));
			const run = await runLineMode({ file: jobFile(seed), home: folder }, (ask) => operator.answer(ask));
			expect(run.code).toBe(0);
			const done = run.outputs.at(-1) as DoneNote;
			expect(done.note).toBe('done');
			const [session] = run.outputs as [SessionNote];
			const kept = readLog(session.log).records.slice(1);
			const refused = (output: Output | undefined) =>
				output !== undefined && 'note' in output && output.note === 'refused';
			// A number that the bender cannot have shown is refused, leaves no record, and is asked for again.
			const taken = run.outputs.filter((output, i) => 'ask' in output && !refused(run.outputs[i + 1]));
			const { job } = startIn(readLog(session.log).records[0]!);
			expect(kept.map(({ ask }) => asLine(ask as Ask, job))).toEqual(taken);
			expect(kept).toHaveLength(run.answers.length - run.outputs.filter(refused).length);
			for (const [i, bend] of done.bends.entries()) {
				const miss = (operator.made.get(i + 1) ?? Number.NaN) - bend.target;
				bends++;
				pulls += bend.pulls;
				if (miss > 0.5) over++;
				if (Math.abs(miss) <= 0.5) within++;
			}
			rmSync(session.log);
		}
		console.log(
			`cold: ${pulls / bends} pulls a bend, ${(100 * over) / bends} % over, ${(100 * within) / bends} % within`,
		);
		expect(bends).toBe(3 * RUNS);
		expect(over / bends).toBeLessThanOrEqual(0.03);
		expect(pulls / bends).toBeLessThanOrEqual(3.5);
	});
});
