import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { displayAt } from '../../src/cli/display.ts';
import { openSettings } from '../../src/settings/settings.ts';

const homes: string[] = [];
const newHome = () => {
	const home = mkdtempSync(join(tmpdir(), 'display-'));
	homes.push(home);
	return home;
};
afterEach(() => {
	for (const home of homes.splice(0)) rmSync(home, { recursive: true });
});

describe('what a person chooses about the screen', () => {
	test('is nothing at first, and costs no file', () => {
		expect(displayAt(newHome()).kept()).toEqual({});
	});

	test('is kept in a home beside other preferences, and found again', async () => {
		const home = newHome();
		await openSettings(home).setPreferences({ jobs: '/tubes' });
		const display = displayAt(home);
		display.keep({ lengths: 'mm' });
		display.keep({ checklist: false });
		expect(display.kept()).toEqual({ lengths: 'mm', checklist: false });
		await vi.waitFor(() => expect(displayAt(home).kept()).toEqual({ lengths: 'mm', checklist: false }));
		expect(openSettings(home).preferences()).toMatchObject({ jobs: '/tubes', lengths: 'mm' });
	});

	test('holds for the session where the settings cannot be read', async () => {
		const home = newHome();
		const display = displayAt(join(home, 'there', 'is', 'none'));
		display.keep({ fromStart: true });
		expect(display.kept()).toEqual({ fromStart: true });
		await vi.waitFor(() => expect(displayAt(join(home, 'there', 'is', 'none')).kept()).toEqual({ fromStart: true }));
		expect(readFileSync(join(home, 'there', 'is', 'none', 'settings.json'), 'utf8')).toContain('fromStart');
	});
});
