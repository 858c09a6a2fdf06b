import { describe, expect, test } from 'vitest';
import type { MadePull } from '../../src/screen/session/live-port.ts';
import type { ConfirmAsk } from '../../src/session/protocol/asks.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import * as asks from '../helpers/screen/asks.ts';
import { FakeHome, FakeLive } from '../helpers/screen/fake-ports.ts';
import { runScreen } from '../helpers/screen/run-screen.ts';

function shown(output: Output, pulls: readonly MadePull[] = []) {
	const live = Object.assign(new FakeLive([output]), { pulls: () => pulls });
	return runScreen(new FakeHome(live), undefined, { jobPath: 'arch.json' });
}

describe('something else that was measured and is asked again', () => {
	test.each<[ConfirmAsk['evidence'], ConfirmAsk['of'], string]>([
		['farEndToMark', 'length', 'far end to the mark of bend 2'],
		['leg', 'length', 'straight before bend 2'],
		['mark', 'mark', 'mark of bend 2, from the start end'],
		['rotation', 'rotation', 'plane of bend 2 to the one before'],
		[undefined, 'length', 'length of the piece'],
	])('%s is called what it is', async (evidence, of, words) => {
		const ask = { ...asks.CONFIRM, of, ...(evidence === undefined ? {} : { evidence }) };
		expect(await shown(ask).until('Read it again')).toMatch(new RegExp(`^Read it again: ${words}$`, 'm'));
	});
});

describe('a bend that was opened', () => {
	test('has a rung of its own for what it then was: the pull keeps what it led to', async () => {
		const pulls = [{ loaded: 54, released: null, measured: [51.8, 52, 49.3], opened: [2] }];
		const text = await shown(asks.DECIDE, pulls).until('opened, made');
		expect(text).toMatch(/^1 held 54°, made 51\.9° /m);
		expect(text).toMatch(/^ {2}opened, made 49\.3° /m);
	});
});
