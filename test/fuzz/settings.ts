import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { runBender } from '../../src/cli/bender.ts';
import { actsIn } from '../helpers/cli/hostile.ts';
import { written } from '../helpers/cli/written.ts';
import { type Change, changed, changes } from './changed-json.ts';
import type { Subject } from './subject.ts';

interface Case {
	changes?: Change[];
	text?: string;
}

const SOUND = {
	benders: [
		{
			name: 'bay two',
			machine: { units: 'in', fields: { maxAngle: 120, dialStep: 0.5 } },
			dies: [{ name: '6 in', units: 'in', fields: { clr: 6, growth: 1.01, clamp: 4, stretch: 0.004 } }],
		},
	],
	forgotten: [{ bender: 'bay two', die: null, before: '2026-01-01T00:00:00.000Z' }],
	preferences: { lengths: 'mm', jobs: 'jobs' },
};

export const settings: Subject<Case> = {
	name: 'settings',
	cases: fc.oneof(
		{ weight: 4, arbitrary: fc.record({ changes: changes(4) }) },
		{ weight: 1, arbitrary: fc.record({ text: fc.oneof(fc.string({ unit: 'binary' }), fc.json()) }) },
	),
	async holds({ changes: list = [], text }, cover) {
		const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
		try {
			writeFileSync(join(home, 'settings.json'), text ?? JSON.stringify(changed(SOUND, list)) ?? '');
			const { io, kept } = written();
			await runBender({ name: null, json: false, home, options: {} }, io);
			cover(kept.err === '' ? 'read' : 'set aside, and said so');
			if (actsIn(kept.out + kept.err).length > 0) throw new Error('the settings act on the terminal');
			await runBender({ name: 'bay one', json: true, home, options: { clr: '6 in', die: 'six' } }, io);
		} finally {
			rmSync(home, { recursive: true, force: true });
		}
	},
};
