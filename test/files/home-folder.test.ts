import { homedir, userInfo } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { homeFolder } from '../../src/files/home-folder.ts';

describe('the home folder', () => {
	const env = { HOME: '/home/ada', XDG_DATA_HOME: '/data', PULLBOOK_HOME: '/kept', LOCALAPPDATA: '/local' };

	it('is what --home says, before anything else, and absolute', () => {
		expect(homeFolder(env, '/else', 'linux')).toBe('/else');
		expect(homeFolder(env, 'here', 'linux')).toBe(resolve('here'));
	});

	it('else PULLBOOK_HOME, else below XDG_DATA_HOME, else below the user’s own data', () => {
		expect(homeFolder(env, null, 'linux')).toBe('/kept');
		expect(homeFolder({ ...env, PULLBOOK_HOME: '' }, null, 'linux')).toBe('/data/pullbook');
		expect(homeFolder({ HOME: '/home/ada' }, null, 'linux')).toBe('/home/ada/.local/share/pullbook');
		expect(homeFolder({}, null, 'linux')).toBe(join(homedir(), '.local', 'share', 'pullbook'));
	});

	it('is below the account’s own folder where HOME is empty, never below the folder one is in', () => {
		const before = process.env.HOME;
		process.env.HOME = '';
		try {
			const home = homeFolder({ HOME: '' }, null, 'linux');
			expect(home).toBe(join(userInfo().homedir, '.local', 'share', 'pullbook'));
			expect(isAbsolute(home)).toBe(true);
		} finally {
			if (before === undefined) delete process.env.HOME;
			else process.env.HOME = before;
		}
	});

	it('does not take a relative XDG_DATA_HOME (Source: XDG Base Directory Specification: such paths are to be ignored)', () => {
		expect(homeFolder({ HOME: '/home/ada', XDG_DATA_HOME: 'data' }, null, 'linux')).toBe(
			'/home/ada/.local/share/pullbook',
		);
	});

	it('is below LOCALAPPDATA on Windows', () => {
		expect(homeFolder({ ...env, PULLBOOK_HOME: undefined }, null, 'win32')).toBe(join('/local', 'pullbook'));
		expect(homeFolder({}, null, 'win32')).toBe(join(homedir(), 'AppData', 'Local', 'pullbook'));
	});
});
