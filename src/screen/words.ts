import type { CheckAsk, ConfirmAsk, EvidenceKind, ReadingKind, TurnWay } from '../session/protocol.ts';
import { EVIDENCE_OF } from '../session/reading-words.ts';
import type { Check, CornerName, Job, StraightPlace } from '../tube/job.ts';
import { formatAngle, formatLength, trimmed } from '../units/format.ts';
import { formatTape } from '../units/tape.ts';
import { inShown, lengthsOf, type Ruled, shownUnits, tapeValue } from './lengths.ts';

/** What kind of number a reading is. */
export type Measure = 'angle' | 'length' | 'ratio';

export function angle(degrees: number): string {
	return formatAngle(degrees, 1);
}

/** A dial figure: dials are divided down to quarters of a degree. */
export function dial(degrees: number): string {
	return formatAngle(degrees, 2);
}

export function plusMinus(value: string, sd: number, places = 1): string {
	return `${value} ± ${trimmed(Math.max(sd, 10 ** -places), places)}`;
}

/** A length as the tape reads it, with its unit. */
export function tape(length: number, job: Ruled): string {
	return `${tapeValue(length, job)} ${shownUnits(job)}`;
}

/** A length finer than the tape: what a check compares. */
export function fine(length: number, job: Ruled): string {
	const shown = inShown(length, job);
	if (lengthsOf(job) !== 'fraction') return formatLength(shown, shownUnits(job));
	return `${formatTape(shown, Math.min(job.units === 'in' ? job.tooling.tape : 1 / 64, 1 / 64), 'in')} in`;
}

/** The same of a length that must not be said to be nothing: what is less than any division is given in decimals. */
export function notNothing(length: number, job: Ruled): string {
	const shown = fine(length, job);
	return length !== 0 && /^-?0 /.test(shown) ? formatLength(inShown(length, job), shownUnits(job)) : shown;
}

export function percent(part: number): string {
	return `${trimmed(100 * part, 1)} %`;
}

export const WAYS: Record<TurnWay, string> = {
	clockwise: 'clockwise',
	counterclockwise: 'counterclockwise',
	either: 'either way',
	none: 'no turn',
};

export const READINGS: Record<ReadingKind, string> = {
	loaded: 'dial, held under load',
	released: 'dial after release',
	pointer: 'dial with the tube snug',
	angle: 'angle finder',
	mark: 'mark as made, from the start end',
	rotation: 'rotation as set',
	length: 'length of the piece',
	check: 'check',
};

export const EVIDENCE: Record<EvidenceKind, string> = {
	farEndToMark: "from the far end to a bend's mark",
	leg: 'the straight before a bend, tangent to tangent',
	mark: "where a bend's mark really was, from the start end",
	rotation: "how a bend's plane really lies to the bend before",
	angle: "a bend's angle, measured again",
};

export const EVIDENCE_MEASURE: Record<EvidenceKind, Measure> = {
	angle: 'angle',
	farEndToMark: 'length',
	leg: 'length',
	mark: 'length',
	rotation: 'angle',
};

/** What a reading is called where it is asked again or listed. */
export function readingName({ of, name, bend, evidence }: Named): string {
	if (evidence !== undefined && bend !== undefined) return EVIDENCE_OF[evidence](bend);
	return of === 'check' && name !== undefined ? `check "${name}"` : READINGS[of];
}

type Named = Pick<ConfirmAsk, 'of' | 'name' | 'bend' | 'evidence'>;

/** What a reading of that kind is measured in; a check's by the check of that name. */
export function measureOf(of: ReadingKind, job: Job, name?: string): Measure {
	if (of === 'mark' || of === 'length') return 'length';
	if (of !== 'check') return 'angle';
	const kind = job.checks.find((check) => check.name === name)?.kind;
	return kind === undefined ? 'length' : checkMeasure(kind);
}

export function checkMeasure(kind: CheckAsk['kind']): Measure {
	if (kind === 'angle') return 'angle';
	return kind === 'ovality' ? 'ratio' : 'length';
}

/** A value of that measure, as it is shown beside others of its kind. */
export function shown(value: number, measure: Measure, job: Ruled): string {
	if (measure === 'angle') return angle(value);
	return measure === 'ratio' ? trimmed(value, 3) : fine(value, job);
}

export function spreadOf(sd: number, measure: Measure, job: Ruled): string {
	if (measure === 'angle') return angle(Math.max(sd, 0.1));
	if (measure === 'ratio') return trimmed(Math.max(sd, 0.001), 3);
	return notNothing(sd, job);
}

function corner(name: CornerName): string {
	if ('bend' in name) return `the corner of bend ${name.bend}`;
	return name.end === 'start' ? 'the start end' : 'the far end';
}

function straightPlace({ straight, at }: StraightPlace): string {
	return `the ${at ?? 'start'} of straight ${straight}`;
}

/** What a check measures, in a sentence without its end. */
export function checkWords(check: Check): string {
	switch (check.kind) {
		case 'drop': {
			const to = 'bend' in check.to ? `the outermost of bend ${check.to.bend}` : straightPlace(check.to);
			const surface =
				check.surface === 'across' ? ', edge on the face away from the bend, over the tube' : ', centre line';
			return `Drop from the line of straight ${check.from} to ${to}${surface}`;
		}
		case 'angle':
			return `Angle between straights ${check.between[0]} and ${check.between[1]}`;
		case 'span':
			return `Distance from ${corner(check.from)} to ${corner(check.to)}`;
		case 'out':
			return `How far ${straightPlace(check.to)} lies out of the plane of straights ${check.plane[0]} and ${check.plane[1]}`;
		case 'ovality':
			return `Least over greatest outside diameter at the middle of bend ${check.bend}`;
	}
}
