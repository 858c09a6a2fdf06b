import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { JobNotSaved, saveJobFile } from '../../src/job/save.ts';
import { errorWords } from '../../src/words/error.ts';

let folder = '';
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'save-'));
});
afterEach(() => {
	chmodSync(folder, 0o700);
	rmSync(folder, { recursive: true });
});

describe('a job file', () => {
	it('is written whole, and nothing else is left in the folder', () => {
		expect(saveJobFile(join(folder, 'a.json'), '{ "a": 1 }\n', false)).toBe(true);
		expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('{ "a": 1 }\n');
		expect(readdirSync(folder)).toEqual(['a.json']);
	});

	it('takes no other one’s place unless told to', () => {
		writeFileSync(join(folder, 'a.json'), 'first');
		expect(saveJobFile(join(folder, 'a.json'), 'second', false)).toBe(false);
		expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('first');
		expect(saveJobFile(join(folder, 'a.json'), 'second', true)).toBe(true);
		expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('second');
		expect(readdirSync(folder)).toEqual(['a.json']);
	});

	it('that cannot be written is said with the reason', () => {
		const path = join(folder, 'gone', 'a.json');
		const save = () => saveJobFile(path, 'x', false);
		expect(save).toThrow(JobNotSaved);
		expect(save).toThrow(expect.objectContaining({ fact: expect.objectContaining({ code: 'job-not-saved', path }) }));
		try {
			save();
		} catch (error) {
			expect(errorWords(error)).toBe(`The job was not saved as ${path}: the folder is not there any more.`);
		}
	});
});
