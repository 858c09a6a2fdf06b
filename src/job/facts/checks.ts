import type { CheckKind } from '../../session/protocol/kinds.ts';

/** What a drop or a width can be measured to, and along what a size. */
export type Surface = 'drop-surface' | 'width-surface' | 'axis' | 'end';

export type CheckFound = { code: 'kinds'; kinds: readonly CheckKind[] };

export type CheckRight =
	| { code: 'checks'; most: number }
	| { code: 'a-check' | 'one-kind'; kinds: readonly CheckKind[] }
	| { code: 'other-check-name'; index: number }
	| { code: 'one-of'; of: Surface }
	/** An object with one of these keys. */
	| { code: 'one-key'; keys: readonly string[] }
	| { code: 'other-straight'; than: number }
	| { code: 'other-place' }
	| StraightsRight;

/** What two straights have to be for a check between them; both numbers in degrees. */
export type StraightsRight =
	| { code: 'two-straights' }
	| { code: 'not-parallel' }
	| { code: 'parallel'; within: number; apart: number };
