import type { ConfirmAsk } from '../session/protocol/asks.ts';
import type { EvidenceKind, ReadingKind } from '../session/protocol/kinds.ts';
import type { TurnWay } from '../tube/turns.ts';
import { foreignName } from './foreign.ts';

export const WAYS: Record<TurnWay, string> = {
	clockwise: 'clockwise',
	counterclockwise: 'counterclockwise',
	either: 'either way',
	none: 'no turn',
};

/** What each kind of reading is, in the words of the bench. */
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

/** What else was measured on the tube, of a bend. */
export const EVIDENCE_OF: Readonly<Record<EvidenceKind, (bend: number) => string>> = {
	angle: (bend) => `angle of bend ${bend}, measured again`,
	farEndToMark: (bend) => `far end to the mark of bend ${bend}`,
	leg: (bend) => `straight before bend ${bend}`,
	mark: (bend) => `mark of bend ${bend}, from the start end`,
	rotation: (bend) => `plane of bend ${bend} to the one before`,
};

/** What a reading is called where it is asked again or listed. */
export function readingName({ of, name, bend, evidence }: NamedReading): string {
	if (evidence !== undefined && bend !== undefined) return EVIDENCE_OF[evidence](bend);
	return of === 'check' && name !== undefined ? `check "${foreignName(name)}"` : READINGS[of];
}

type NamedReading = Pick<ConfirmAsk, 'of' | 'name' | 'bend' | 'evidence'>;
