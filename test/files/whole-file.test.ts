import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { realFs } from '../../src/files/fs-port.ts';
import { replaceFile, writeUnlessThere } from '../../src/files/whole-file.ts';
import { FATES } from '../helpers/disk/fates.ts';
import { type Fault, FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';

const PATH = '/a.json';
const [OLD, NEW] = [Buffer.from('the old one'), Buffer.from('the new one, which is longer')];

function disk(fault: Fault | null, there: boolean): FaultFs {
	const fs = new FaultFs();
	if (there) fs.place(PATH, OLD);
	fs.fault = fault;
	return fs;
}

function textOn(fs: FaultFs): string | null {
	return fs.files().includes(PATH) ? fs.readFileSync(PATH).toString() : null;
}

/** How many calls the work takes where all goes well. */
function callsOf(there: boolean, work: (fs: FaultFs) => void): number {
	const fs = disk(null, there);
	work(fs);
	return fs.calls;
}

describe.each([
	['put over another', true, (fs: FaultFs): void => replaceFile(fs, PATH, NEW, 0o600)],
	['put where none is', false, (fs: FaultFs): void => void writeUnlessThere(fs, PATH, NEW, 0o600)],
] as const)('a file %s', (_, there, work) => {
	const before = there ? OLD.toString() : null;
	const calls = [...Array(callsOf(there, work)).keys()].map((at) => at + 1);

	it('is the new one, and nothing lies beside it', () => {
		const fs = disk(null, there);
		work(fs);
		expect(textOn(fs)).toBe(NEW.toString());
		expect(fs.files()).toEqual([PATH]);
	});

	it.each(['ENOSPC', 'EIO'])('is the old one or the new one when any call says %s', (code) => {
		for (const at of calls) {
			const fs = disk({ kind: 'errno', at, code }, there);
			try {
				work(fs);
			} catch (error) {
				expect(error).toMatchObject({ code });
			}
			expect([before, NEW.toString()]).toContain(textOn(fs));
		}
	});

	it('is the old one or the new one when a write is cut short', () => {
		for (const at of calls) {
			const fs = disk({ kind: 'partial', at, code: 'ENOSPC', bytes: 3 }, there);
			try {
				work(fs);
			} catch (error) {
				expect(error).toMatchObject({ code: 'ENOSPC' });
				expect(fs.files()).toEqual(there ? [PATH] : []);
			}
			expect([before, NEW.toString()]).toContain(textOn(fs));
		}
	});

	it.each(FATES)('is the old one or the new one when the power goes at any call, and the disk %s', (_, fate) => {
		for (const at of calls) {
			const fs = disk({ kind: 'cut', at }, there);
			try {
				work(fs);
			} catch (error) {
				expect(error).toBeInstanceOf(PowerCut);
			}
			expect([before, NEW.toString()]).toContain(textOn(fs.afterPowerCut(fate)));
		}
	});

	it.each(FATES)('is the new one once it is written, though the power goes and the disk %s', (_, fate) => {
		const fs = disk(null, there);
		work(fs);
		expect(textOn(fs.afterPowerCut(fate))).toBe(NEW.toString());
	});
});

it('is not put where one is', () => {
	const fs = disk(null, true);
	expect(writeUnlessThere(fs, PATH, NEW, 0o600)).toBe(false);
	expect(textOn(fs)).toBe(OLD.toString());
	expect(fs.files()).toEqual([PATH]);
});

it('is written without links where the file system has none', () => {
	const fs = disk(null, false);
	fs.linkSync = () => {
		throw Object.assign(new Error('no links here'), { code: 'ENOTSUP' });
	};
	expect(writeUnlessThere(fs, PATH, NEW, 0o600)).toBe(true);
	expect(textOn(fs)).toBe(NEW.toString());
	expect(fs.files()).toEqual([PATH]);
});

describe('what lies under the name in the making', () => {
	it.each(['a link', 'a part that a killed program left'])(
		'%s is taken away, and nothing is written through it',
		(left) => {
			const folder = mkdtempSync(join(tmpdir(), 'pullbook-whole-'));
			try {
				const [path, other] = [join(folder, 'a.json'), join(folder, 'other')];
				const making = `${path}.new-${process.pid}`;
				writeFileSync(other, 'untouched');
				if (left === 'a link') symlinkSync(other, making);
				else writeFileSync(making, 'a part that is much longer than what is written now');
				replaceFile(realFs, path, NEW, 0o600);
				expect(readFileSync(other, 'utf8')).toBe('untouched');
				expect(readFileSync(path)).toEqual(NEW);
				expect(readdirSync(folder).sort()).toEqual(['a.json', 'other']);
			} finally {
				rmSync(folder, { recursive: true });
			}
		},
	);
});
