import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { livePort } from '../../src/cli/session-on-screen.ts';
import { LiveSession } from '../../src/journal/live.ts';
import type { SessionState } from '../../src/screen/session/session-state.ts';
import { frameOf } from '../../src/screen/shell/app-frame.ts';
import { Controller } from '../../src/screen/shell/controller.ts';
import { keyOfChunk } from '../../src/screen/shell/keys.ts';
import { lookOf } from '../../src/screen/shell/look.ts';
import type { Size } from '../../src/terminal/output.ts';
import { FakeHome } from '../helpers/screen/fake-ports.ts';
import { hatJob } from '../helpers/shop/hat.ts';

let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'keys-'));
});
afterAll(() => rmSync(home, { recursive: true }));

/** A clean tube: the first bend comes out short at its first pull, all else as wanted; the crown as expected. */
class Bench {
	readonly controller: Controller;
	pressed = '';
	pulls = 0;
	readings = 0;
	checks = 0;
	private time = 0;

	constructor(readonly size: Size) {
		const [crown] = hatJob().checks;
		const session = LiveSession.begin(
			{ home, program: 'test', now: () => new Date(Date.UTC(2026, 0, 5)), random: () => `${size.columns}` },
			{ job: hatJob({ checks: [crown!] }), path: '/none.json', raw: {} },
			false,
			[],
		);
		const world = { now: () => (this.time += 1000), ring: () => {} };
		const display = { kept: () => ({}), keep: () => {} };
		this.controller = new Controller(
			new FakeHome(livePort(session)),
			{ jobPath: 'hat.json' },
			() => size,
			display,
			world,
		);
	}

	get session(): SessionState | null {
		const state = this.controller.snapshot();
		return state.view === 'session' ? state.session : null;
	}

	/** What the page shows has to have room for its title, its question and its keys. */
	look(): string {
		const { lines } = frameOf(this.controller.snapshot(), this.size, lookOf({ TERM: 'xterm' }, true));
		return lines.map((line) => line.map(({ text }) => text).join('')).join('\n');
	}

	press(keys: string): void {
		for (const key of keys) this.controller.take(keyOfChunk(key)!);
		this.pressed += keys;
	}

	/** The keys for the page that is open; null once the session is over. */
	keys({ page, ask }: SessionState): string {
		if (page.page !== 'ask' || ask === null) return '+';
		const value = (number: number, digits: number) => `${Number(number.toFixed(digits))}\r`;
		switch (ask.ask) {
			case 'pull':
				this.pulls += 1;
				return '+';
			case 'measure':
				this.readings += 1;
				return value(ask.bend === 1 && this.pulls === 1 ? ask.expect.angle : this.wanted(), 1);
			case 'check':
				this.checks += 1;
				return value(ask.expect.value, 2);
			default:
				return '+';
		}
	}

	/** A finder hardly ever shows a whole number. */
	private wanted(): number {
		return (this.session?.set?.target ?? 0) - 0.1;
	}
}

describe.each([
	{ columns: 60, rows: 20 },
	{ columns: 80, rows: 24 },
	{ columns: 100, rows: 30 },
	{ columns: 160, rows: 50 },
])('at $columns by $rows', (size) => {
	test('a clean shallow hat takes at most 50 keys', async () => {
		const bench = new Bench(size);
		while (bench.session === null) await turn();
		for (let n = 0; n < 100 && bench.session !== null; n++) {
			const { page, ask } = bench.session;
			expect(page.page === 'ask' ? ask?.ask : page.page).not.toBe('confirm');
			if (page.page === 'ask' && ask?.ask === 'pull') expect(bench.look()).toContain('held there');
			bench.press(bench.keys(bench.session));
			if (page.page === 'done') break;
		}
		await bench.controller.ended;
		expect([bench.pulls, bench.readings, bench.checks]).toEqual([4, 5, 1]);
		expect(bench.pressed.length).toBeLessThanOrEqual(50);
		bench.controller.end(0);
	});
});
