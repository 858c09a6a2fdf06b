import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runLayout } from '../../src/cli/layout.ts';
import { written } from '../helpers/cli/written.ts';

let home = '';
beforeEach(() => {
	home = mkdtempSync(join(tmpdir(), 'pullbook-chalk-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function layout(request: { json: boolean; chalk: boolean }): Promise<string> {
	const file = join(home, 'job.json');
	const job = {
		pullbook: 'job/1',
		name: 'Fender rail',
		units: 'in',
		tube: { material: '1020-dom', od: 1.5, wall: 0.095 },
		tooling: { clr: 6, growth: 1 },
		shape: { bends: [{ straight: 10, angle: 90, rotation: 0 }], last: 20 },
	};
	writeFileSync(file, JSON.stringify(job));
	const { io, kept } = written();
	await runLayout({ file, home, as: { mirror: false, from: 'start' }, learn: false, ...request }, io);
	return kept.out;
}

describe('pullbook layout --chalk', () => {
	it('prints what to draw on the bench', async () => {
		expect(await layout({ json: false, chalk: true })).toBe(`Fender rail: center line (lengths in inches)
The marks are for the die's own radius, as the job says.
Draw the base line from A to B. Measure each point along the line from A, then
square off it. No square? Strike an arc from A and one from B: the point is
where they cross. Draw each bend round its center: the radius is 6.

The tube lies in one plane. The base line is 16 long. A is the start end; the
line runs along straight 1. Off the line: to the side that bend 1 bends to;
below 0 to the other.
  point             along  off the line    from A  from B
  straight begins       0             0         0      16
  bend 1 begins        10             0        10       6
  bend 1 corner        16             0        16       0
  bend 1 middle    14 1/4         1 3/4    14 3/8   2 1/2
  bend 1 ends          16             6   17 1/16       6
  bend 1 center        10             6  11 11/16   8 1/2
  straight ends        16            26    30 1/2      26
`);
	});

	it('is a further field of the document, and all else stays', async () => {
		const plain = JSON.parse(await layout({ json: true, chalk: false }));
		const { chalk, ...rest } = JSON.parse(await layout({ json: true, chalk: true }));
		expect(rest).toEqual(plain);
		expect(chalk).toHaveLength(1);
		const corner = chalk[0].points.find(({ what }: { what: string }) => what === 'corner');
		expect([corner.along, corner.off, 0]).toEqual([
			expect.closeTo(plain.corners[1][0], 9),
			expect.closeTo(plain.corners[1][1], 9),
			0,
		]);
	});
});
