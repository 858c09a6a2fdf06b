import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import type { LiveSession } from '../../src/journal/live.ts';
import { parseLog } from '../../src/journal/read-log.ts';
import { encodeRecord } from '../../src/journal/record.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';
import { type Change, changed, changes } from './changed-json.ts';

/** What has become of a log on its way. */
export type Damage =
	| { kind: 'flip' | 'cut' | 'zeros' | 'insert' | 'swap' | 'double'; at: number; by: number }
	/** A record written anew, its checksum right: by a person, or by a program that is not ours. */
	| { kind: 'forged'; at: number; changes: Change[] };

export interface SoundLog {
	id: string;
	bytes: Buffer;
}

/** Answers to whatever is asked, so that the log holds events of most kinds. */
const ODD = [
	{ note: 'slack in the clamp' },
	{ heat: 'H 4471' },
	{ undo: true },
	{ ready: true, pointer: 0.5 },
	{ loaded: 19, released: 14 },
	{ loaded: 60 },
	{ keep: true },
	{ reseat: true },
	{ ready: true },
	{ loaded: 20.5 },
	{ angle: 15 },
	{ amend: { entry: 3, reading: 0.25 } },
	{ evidence: { kind: 'mark', bend: 1, reading: 10.5 } },
	{ skip: true },
	{ do: 'pull' },
	{ still: true },
];

const MADE: readonly ((home: string) => LiveSession)[] = [
	(home) => bendIn(home, { day: 1, job: hatJob(), answers: 14 }),
	(home) => {
		const session = bendIn(home, { day: 1, job: hatJob(), answers: 12, stays: true });
		for (const answer of ODD) session.answerText(JSON.stringify(answer));
		session.leave();
		session.close();
		return session;
	},
	(home) => bendIn(home, { day: 1, job: twoDieJob(), answers: 200 }),
];

/** How many sound logs there are. */
export const SOUND = MADE.length;

const made: SoundLog[] = [];

/** A session's log as it is written, made once. */
export function soundLog(which: number): SoundLog {
	const home = mkdtempSync(join(tmpdir(), 'pullbook-fuzz-'));
	try {
		made[which] ??= kept(MADE[which]!(home));
		return made[which];
	} finally {
		rmSync(home, { recursive: true, force: true });
	}
}

const kept = ({ id, logPath }: LiveSession): SoundLog => ({ id, bytes: readFileSync(logPath) });

export function damaged(bytes: Buffer, damage: Damage): Buffer {
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
export const damage: fc.Arbitrary<Damage> = fc.oneof(
	{
		weight: 2,
		arbitrary: fc.record({ kind: fc.constantFrom('flip', 'cut', 'zeros', 'insert', 'swap', 'double'), ...place }),
	},
	{ weight: 3, arbitrary: fc.record({ kind: fc.constant('forged'), at: fc.nat(40), changes: changes(2) }) },
) as fc.Arbitrary<Damage>;
