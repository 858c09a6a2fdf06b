import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { runLog } from '../../src/cli/log.ts';
import { reportError } from '../../src/cli/report.ts';
import { sessionPath } from '../../src/journal/catalogue.ts';
import { parseLog } from '../../src/journal/read-log.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { actsIn } from '../helpers/hostile.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { written } from '../helpers/written.ts';
import { type Change, changed, changes } from './changed-json.ts';
import type { Subject } from './subject.ts';

type Damage =
	| { kind: 'flip' | 'cut' | 'zeros' | 'insert' | 'swap' | 'double'; at: number; by: number }
	/** A record written anew, its checksum right: by a person, or by a program that is not ours. */
	| { kind: 'forged'; at: number; changes: Change[] };

interface Case {
	damages: Damage[];
}

let sound: { id: string; bytes: Buffer } | null = null;

/** A session's log as it is written, made once. */
function soundLog(): { id: string; bytes: Buffer } {
	if (sound !== null) return sound;
	const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
	const session = bendIn(home, { day: 1, job: hatJob(), answers: 14 });
	sound = { id: session.id, bytes: readFileSync(session.logPath) };
	rmSync(home, { recursive: true, force: true });
	return sound;
}

function damaged(bytes: Buffer, damage: Damage): Buffer {
	const at = damage.at % Math.max(1, bytes.length);
	const lines = bytes.toString('latin1').split('\n');
	const line = damage.at % lines.length;
	switch (damage.kind) {
		case 'flip': {
			const copy = Buffer.from(bytes);
			if (copy.length > 0) copy[at] = copy[at]! ^ (1 << (damage.by % 8));
			return copy;
		}
		case 'cut':
			return bytes.subarray(0, at);
		case 'zeros':
			return Buffer.concat([
				bytes.subarray(0, at),
				Buffer.alloc(Math.min(damage.by, bytes.length - at)),
				bytes.subarray(at + damage.by),
			]);
		case 'insert':
			return Buffer.concat([bytes.subarray(0, at), Buffer.from([damage.by % 256]), bytes.subarray(at)]);
		case 'swap':
			[lines[line], lines[(line + damage.by) % lines.length]] = [
				lines[(line + damage.by) % lines.length]!,
				lines[line]!,
			];
			return Buffer.from(lines.join('\n'), 'latin1');
		case 'double':
			lines.splice(line, 0, lines[line]!);
			return Buffer.from(lines.join('\n'), 'latin1');
		case 'forged': {
			const { records } = parseLog(bytes);
			const record = damage.at % Math.max(1, records.length);
			if (records.length === 0) return bytes;
			const forged = changed(records[record], damage.changes);
			if (typeof forged !== 'object' || forged === null || Array.isArray(forged)) return bytes;
			return Buffer.concat(
				records.map((each, i) => encodeRecord(i === record ? { ...each, ...forged, seq: i, v: 1 } : each)),
			);
		}
	}
}

const place = { at: fc.nat(40_000), by: fc.nat(3000) };
const damage: fc.Arbitrary<Damage> = fc.oneof(
	{
		weight: 2,
		arbitrary: fc.record({ kind: fc.constantFrom('flip', 'cut', 'zeros', 'insert', 'swap', 'double'), ...place }),
	},
	{ weight: 3, arbitrary: fc.record({ kind: fc.constant('forged'), at: fc.nat(40), changes: changes(2) }) },
) as fc.Arbitrary<Damage>;

export const logs: Subject<Case> = {
	name: 'logs',
	cases: fc.record({ damages: fc.array(damage, { minLength: 1, maxLength: 3 }) }),
	async holds({ damages }, cover) {
		const { id, bytes } = soundLog();
		const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
		try {
			const session = bendIn(home, { day: 2, job: hatJob(), answers: 1 });
			writeFileSync(sessionPath(home, id), damages.reduce(damaged, bytes));
			for (const json of [false, true]) {
				const { io, kept } = written();
				const listed = await runLog({ id: null, json, home }, io);
				if (!(kept.out + kept.err).includes(session.id)) throw new Error('one bad log hides the others');
				const shown = await runLog({ id, json, home }, io).catch((error: unknown) =>
					reportError(error, io.stderr, false),
				);
				if (shown === 1) throw new Error(`the log ends the program: ${kept.err}`);
				cover(`list ${listed}, log ${shown}`);
				if (actsIn(kept.out + kept.err).length > 0) throw new Error('the log acts on the terminal');
			}
		} finally {
			rmSync(home, { recursive: true, force: true });
		}
	},
};
