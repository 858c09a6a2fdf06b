import type { Sharing } from '../../../springback/history.ts';
import type { AsideFact, DoubtFact, PullFact } from '../../protocol/facts/index.ts';
import type { CheckKind, EvidenceKind, ReadingKind } from '../../protocol/kinds.ts';
import {
	either,
	type Is,
	isByTag,
	isCount,
	isList,
	isName,
	isNumber,
	isOf,
	isOneOf,
	isOrdinal,
	isText,
	orAbsent,
} from './is.ts';

export const isReadingKind: Is<ReadingKind> = isName({
	loaded: true,
	released: true,
	pointer: true,
	angle: true,
	mark: true,
	rotation: true,
	length: true,
	check: true,
});

export const isEvidenceKind: Is<EvidenceKind> = isName({
	angle: true,
	farEndToMark: true,
	leg: true,
	mark: true,
	rotation: true,
});

const isCheckKind: Is<CheckKind> = isName({
	drop: true,
	angle: true,
	span: true,
	out: true,
	width: true,
	overall: true,
	ovality: true,
});

export const isSharing: Is<Sharing> = isName({
	'bender and die': true,
	bender: true,
	tube: true,
	material: true,
	nothing: true,
});

const isPullFact: Is<PullFact> = isByTag('code', {
	'springback-expected': {
		by: isNumber,
		to: isNumber,
		sd: isNumber,
		known: isOf({ tubes: isCount, near: isList(isOf({ shares: isSharing, tubes: isCount })), pulls: isCount }),
		zero: orAbsent(isNumber),
	},
	'chance-over': { limit: isNumber, chance: isNumber },
	'dial-moved': { held: isNumber, by: isNumber },
	'opened-since': { held: isNumber },
	'dial-far-off': { by: isNumber },
	'stop-capped': {},
});

const dialFact = { value: isNumber, held: isNumber, inside: orAbsent(isNumber) };

export const isDoubtFact: Is<DoubtFact> = isByTag('code', {
	'off-the-stop': { stop: isNumber, value: isNumber },
	'above-the-dial': dialFact,
	'below-the-dial': dialFact,
	'not-expected': { expected: isNumber, sd: isNumber },
	'not-as-made': { bend: isOrdinal, angle: isNumber, value: isNumber },
	'turn-off': { asked: isNumber, off: isNumber },
	'check-off': { name: isText, kind: isCheckKind, expected: isNumber, value: isNumber },
	'look-at': {
		kind: isCheckKind,
		bend: orAbsent(isOrdinal),
		angle: orAbsent(isNumber),
		slip: orAbsent(isOf({ of: isOneOf('mark', 'rotation'), bend: isOrdinal, was: isNumber, would: isNumber })),
	},
	'length-off': { expected: isNumber, value: isNumber },
	'readings-differ': { values: isList(isNumber), most: isNumber },
	slip: {
		slip: isName({ inch: true, ten: true, foot: true, unit: true, moved: true, swapped: true, doubled: true }),
		would: isNumber,
		measure: isOneOf('length', 'angle'),
	},
	'explained-since': {},
});

const isAsideFact: Is<AsideFact> = isByTag('code', {
	'set-aside': {
		of: isReadingKind,
		values: isList(isNumber),
		bend: orAbsent(isOrdinal),
		name: orAbsent(isText),
		kind: orAbsent(isCheckKind),
	},
	'check-contradicted': { name: isText, kind: isCheckKind, value: isNumber },
});

/** What a pull can have been asked for. */
export const isPullReason: Is<PullFact | AsideFact> = either(isPullFact, isAsideFact);
