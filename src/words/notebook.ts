/** What came of copying sessions between folders, and of looking through every log. */
import type { Copied, Exchanged, LeftBehind, LeftOut, Noticed, Verified } from '../journal/exchange/facts.ts';
import { counted } from './counted.ts';
import { foreign, foreignName } from './foreign.ts';
import { causeWords, journalWords } from './journal.ts';
import { NONE_KEPT } from './session-list.ts';

/** Which way sessions went. */
export type ExchangeWay = 'export' | 'import';

/** What came of it: how many of each kind, then each one that needs a look. `folder`: where to, or where from. */
export function exchangedText(way: ExchangeWay, folder: string, { copied, left, stopped }: Exchanged): string {
	const where = `${way === 'export' ? 'to' : 'from'} ${foreign(folder)}`;
	const isEmpty = copied.length + left.length === 0 && stopped === null;
	const added = countCopied(copied, 'added');
	const longer = countCopied(copied, 'longer');
	const there = countCopied(copied, 'there');
	return [
		...(isEmpty ? [`There is no session to copy ${where}.`] : []),
		...(added > 0 ? [`Copied ${sessions(added)} ${where}.`] : []),
		...(longer > 0 ? [`${sessions(longer)} had gone on: the new lines are copied too.`] : []),
		...(there > 0 ? [`${sessions(there)} ${there === 1 ? 'was' : 'were'} there already.`] : []),
		...copied.flatMap((each) => (each.how === 'apart' ? [apartWords(each)] : [])),
		...leftLines(left),
		...(stopped === null ? [] : [stoppedWords(way, stopped)]),
	].join('\n');
}

const countCopied = (copied: readonly Copied[], kind: Copied['how']): number =>
	copied.filter(({ how }) => how === kind).length;

const sessions = (count: number): string => counted(count, 'session');

function apartWords({ id, path, other, lines }: Extract<Copied, { how: 'apart' }>): string {
	const after = lines === 0 ? 'from the first line on' : `after line ${lines}`;
	return `Session ${foreignName(id)} went on in two places, apart ${after}. Both are kept: ${foreign(other)} and ${foreign(path)}.`;
}

function leftLines(left: readonly LeftBehind[]): string[] {
	if (left.length === 0) return [];
	return [
		`Left out ${sessions(left.length)}:`,
		...left.map(({ name, why }) => `  ${foreignName(name)}: ${leftOutWords(why)}`),
	];
}

/** Why a log was left out, and what to do. */
export function leftOutWords(why: LeftOut): string {
	return foreign(leftOut(why));
}

function leftOut(why: LeftOut): string {
	switch (why.code) {
		case 'no-file':
			return `${why.log} is no plain file. Move it away.`;
		case 'too-long':
			return `${why.log} has ${why.size} bytes, and a log has ${why.most} at most. See what it is.`;
		case 'damaged-there':
			return `The log ${why.log} is damaged in line ${why.line}, and ${why.whole} is whole. Move the damaged one away and do this again.`;
		case 'away':
			return `The session of ${why.log} went on in another place when its disk refused. Resume it first: that brings its lines home. Then do this again.`;
		case 'busy':
			return `Another program is writing ${why.log}. Do this again when it is done.`;
		default:
			return journalWords(why);
	}
}

function stoppedWords(way: ExchangeWay, { log, cause }: NonNullable<Exchanged['stopped']>): string {
	const again = `Make room, or mend the disk, and ${way} again: what is copied stays, and nothing is copied twice.`;
	return `The disk refused ${foreign(log)}: ${foreign(causeWords(cause))}. Nothing after it is copied. ${again}`;
}

/** As exchangedText, for another program. */
export function exchangedDocument(folder: string, { copied, left, stopped }: Exchanged): object {
	const ids = (kind: Copied['how']) => copied.flatMap(({ how, id }) => (how === kind ? [id] : []));
	return {
		folder,
		added: ids('added'),
		longer: ids('longer'),
		there: ids('there'),
		apart: copied.flatMap((each) => {
			return each.how === 'apart' ? [{ id: each.id, log: each.path, other: each.other, lines: each.lines }] : [];
		}),
		leftOut: leftDocuments(left),
		stopped: stopped && { log: stopped.log, why: causeWords(stopped.cause) },
	};
}

const leftDocuments = (left: readonly LeftBehind[]): object[] =>
	left.map(({ name, why }) => ({ name, code: why.code, why: leftOutWords(why) }));

/** What came of looking through every log. */
export function verifiedText({ sessions: count, lines, faults, noticed }: Verified): string {
	const whole = count - faults.length;
	const all = `All ${sessions(count)} are whole: ${lines} lines, each as it was written.`;
	const one = `The one session is whole: ${lines} lines, each as it was written.`;
	const some = `${whole} of ${sessions(count)} are whole. These are not:`;
	return [
		count === 0 ? NONE_KEPT : faults.length > 0 ? some : count === 1 ? one : all,
		...faults.map(({ name, why }) => `  ${foreignName(name)}: ${leftOutWords(why)}`),
		...(noticed.length > 0
			? ['Also seen:', ...noticed.map((each) => `  ${foreignName(each.name)}: ${noticedWords(each)}`)]
			: []),
	].join('\n');
}

function noticedWords(noticed: Noticed): string {
	switch (noticed.code) {
		case 'cut-line':
			return `its last line was cut off in the middle (${noticed.bytes} bytes, never saved). Resuming sets it aside.`;
		case 'apart':
			return `it is session ${foreignName(noticed.of)}, gone on apart. Nothing learns from it. Move the one away that does not count.`;
		case 'no-log':
			return 'this is no log of Pullbook. Nothing reads it. Move it away if you miss it somewhere else.';
	}
}

/** As verifiedText, for another program. */
export function verifiedDocument({ sessions, lines, faults, noticed }: Verified): object {
	return {
		sessions,
		lines,
		faults: leftDocuments(faults),
		noticed: noticed.map((each) => ({ ...each, why: noticedWords(each) })),
	};
}
