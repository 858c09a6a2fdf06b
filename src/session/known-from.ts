import type { Provenance, Sharing } from '../springback/history.ts';

/** What the tubes of another combination have in common with the one to be bent. */
const OTHERS: Readonly<Record<Sharing, (count: number) => string>> = {
	'bender and die': (n) => `${others(n)} on this die`,
	bender: (n) => `${n === 1 ? 'one' : n} on another die of this bender`,
	tube: (n) => `${n === 1 ? 'one' : n} like this on other benders`,
	material: (n) => `${n === 1 ? 'one' : n} of this material on other benders`,
	nothing: (n) => `${n === 1 ? 'one' : n} of other kinds on other benders`,
};

/** The two nearest kinds of kin say enough: what is farther off hardly counts. */
const MOST_KINDS = 2;

/**
 * What the springback expected before the first pull is known from, to follow "known": `from 3 tubes like this and 5 other tubes on this
 * die`. A tube is one session.
 */
export function knownFrom(from: Provenance | undefined): string {
	if (from === undefined) return 'from mechanics alone';
	const exact = from.exact.sessions;
	const like = exact > 0 ? [`${exact === 1 ? 'one tube' : `${exact} tubes`} like this`] : [];
	const near = from.near.slice(0, MOST_KINDS).map(({ shares, sessions }) => OTHERS[shares](sessions));
	const all = [...like, ...near];
	if (all.length === 0) return 'from mechanics alone';
	const last = all.pop()!;
	return `from ${all.length > 0 ? `${all.join(', ')} and ${last}` : last}`;
}

function others(count: number): string {
	return count === 1 ? 'one other tube' : `${count} other tubes`;
}
