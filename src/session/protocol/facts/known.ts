import type { Provenance, Sharing } from '../../../springback/history.ts';

/** What the springback is known from: tubes of this very kind, of others by what they share with it, and pulls of the tube in hand. None of them: mechanics alone. */
export interface Known {
	tubes: number;
	near: { shares: Sharing; tubes: number }[];
	pulls: number;
}

/** From so many tubes of the very kind on, others hardly count. */
const ENOUGH_TUBES = 4;
/** Nor does what is farther off than the two nearest kinds. */
const MOST_KINDS = 2;

/** A tube is one session. `pulls`: those of the tube in hand. */
export function knownFrom(from: Provenance | undefined, pulls = 0): Known {
	const tubes = from?.exact.sessions ?? 0;
	const near = tubes >= ENOUGH_TUBES ? [] : (from?.near.slice(0, MOST_KINDS) ?? []);
	return { tubes, near: near.map(({ shares, sessions }) => ({ shares, tubes: sessions })), pulls };
}
