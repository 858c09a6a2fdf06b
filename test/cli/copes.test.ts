import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runLayout } from '../../src/cli/layout.ts';
import { written } from '../helpers/cli/written.ts';

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-copes-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function layout(ends: object, json: boolean): Promise<string> {
	const file = join(home, 'job.json');
	const job = {
		pullbook: 'job/1',
		name: 'Davit brace',
		units: 'in',
		tube: { material: '1020-dom', od: 1.5, wall: 0.083 },
		tooling: { clr: 6, growth: 1 },
		shape: { bends: [{ straight: 20, angle: 90, rotation: 0 }], last: 20 },
		trim: { start: 1, end: 1 },
		ends,
	};
	writeFileSync(file, JSON.stringify(job));
	const { io, kept } = written();
	await runLayout({ file, home, json, as: { mirror: false, from: 'start' }, learn: false }, io);
	return kept.out;
}

/** Two tubes of 1.5 in at 30 degrees that pass each other by 3/4 in: a quarter of the tube stands free, and reaches further than square. */
const LONG = { od: 1.5, angle: 30, offset: '3/4', turn: 180 };

describe('the layout of a tube with coped ends', () => {
	it('says how to cope them and what makes a joint doubtful', async () => {
		const text = (await layout({ start: { cope: { od: 2.5, angle: 90 } }, far: { cope: LONG } }, false)).replace(
			/\s+/g,
			' ',
		);
		expect(text).toContain('at the far end, what the copes need in it.');
		// The Steinmetz curve: from sqrt(1.25^2 - 0.75^2) = 1 in to 1.25 in before the other's center line.
		expect(text).toContain(
			"Cope the start end for a tube of 2 1/2 in at 90°: 1/4 in deep, deepest on the line of bend 1's inside. Its longest point is 1 in before the drawing's end.",
		);
		expect(text).toContain('Look at the joint of the far end: 180° of its round pass by the other tube and stay open.');
	});

	it('cuts the tube longer by what reaches past the drawing, with every mark from the end that moves', async () => {
		const plain = JSON.parse(await layout({}, true));
		const coped = JSON.parse(await layout({ start: { cope: LONG } }, true));
		const [{ past, end }] = coped.copes;
		expect(end).toBe('start');
		expect(past).toBeGreaterThan(0.5);
		expect(coped.cutLength).toBeCloseTo(plain.cutLength + past, 9);
		expect(coped.bends[0].mark.fromStart).toBeCloseTo(plain.bends[0].mark.fromStart + past, 9);
		expect(coped.bends[0].mark.fromFarEnd).toBeCloseTo(plain.bends[0].mark.fromFarEnd, 9);
		expect(coped.corners).toEqual(plain.corners);
		expect(plain.copes).toBeUndefined();
	});
});
