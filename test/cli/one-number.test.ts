import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CheckAsk, SetAsk } from '../../src/session/protocol/asks.ts';
import type { DoneNote, SessionNote } from '../../src/session/protocol/notes.ts';
import type { SessionView } from '../../src/session/report/views.ts';
import type { LayoutDocument } from '../../src/tube/layout.ts';
import { runLineMode } from '../helpers/disk/line-client.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { runHere } from '../helpers/disk/run-here.ts';
import { asExpected } from '../helpers/session/as-expected.ts';

let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'one-'));
});
afterAll(() => rmSync(home, { recursive: true }));

/** Bends a whole tube with every bend measured exactly at its target, and every check read as expected. */
async function bendExactly(file: string) {
	return runLineMode({ file, home }, asExpected);
}

describe.each(SAMPLE_JOBS)('one number for one thing in %s', (file) => {
	it('layout, session, closing note and review agree', async () => {
		const printed = await runHere(['layout', file, '--json'], { home });
		const layout = JSON.parse(printed.out) as LayoutDocument;
		const run = await bendExactly(file);
		const sets = run.outputs.filter((o): o is SetAsk => 'ask' in o && o.ask === 'set');
		const first = sets[0]!;
		expect(first.mark).toMatchObject({ ...layout.bends[0]!.mark, moved: 0 });
		for (const set of sets) {
			const row = layout.bends[set.bend - 1]!;
			expect(set.design).toBe(row.angle);
			expect(set.mark.fromStart - set.mark.moved).toBeCloseTo(row.mark.fromStart, 9);
			expect(set.mark.fromStart + set.mark.fromFarEnd).toBeCloseTo(layout.cutLength, 9);
			expect(set.target).toBeCloseTo(row.angle, -0.8);
		}
		const checks = run.outputs.filter((o): o is CheckAsk => 'ask' in o && o.ask === 'check');
		for (const check of checks) {
			const row = layout.checks.find(({ name }) => name === check.name)!;
			expect({ design: check.design, tolerance: check.tolerance }).toEqual({
				design: row.design,
				tolerance: row.tolerance,
			});
		}
		const done = run.outputs.at(-1) as DoneNote;
		const session = run.outputs[0] as SessionNote;
		const kept = JSON.parse((await runHere(['log', session.id, '--json'], { home })).out) as SessionView;
		expect(kept.bends.map(({ made }) => made)).toEqual(done.bends.map(({ made, sd }) => ({ angle: made, sd })));
		expect(kept.bends.map(({ target }) => target)).toEqual(done.bends.map(({ target }) => target));
		expect(kept.checks).toEqual(done.checks);
		expect(kept.asBuilt).toMatchObject({ endOffset: done.endOffset, endAngle: done.endAngle });
		expect(kept.checks.map(({ name, design }) => ({ name, design }))).toEqual(
			layout.checks.map(({ name, design }) => ({ name, design })),
		);
		const page = (await runHere(['log', session.id], { home })).out;
		for (const { made } of done.bends) expect(page).toContain(`made ${Number(made!.toFixed(1))}`);
	});
});
