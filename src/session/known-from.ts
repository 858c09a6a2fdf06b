import type { Provenance, Sharing } from '../springback/history.ts';

/** Other combinations, by what they have in common with the one to be bent. `tubes`: how many there are, in words. */
const OTHERS: Readonly<Record<Sharing, (tubes: string) => string>> = {
	'bender and die': (tubes) => `${tubes} of other sizes on this die`,
	bender: (tubes) => `${tubes} on other dies of this bender`,
	tube: (tubes) => `${tubes} like this on other benders`,
	material: (tubes) => `${tubes} of this material on other benders`,
	nothing: (tubes) => `${tubes} of other kinds`,
};

/** From so many tubes of the very kind on, others hardly count. */
const ENOUGH = 4;
/** Nor does what is farther off than the two nearest kinds. */
const MOST_KINDS = 2;

/**
 * What the springback expected before the first pull is known from, as the end of a sentence: `from 3 tubes like this and 5 tubes on
 * other dies of this bender`. A tube is one session. `pulls`: those of the tube in hand, which count too.
 */
export function knownFrom(from: Provenance | undefined, pulls = 0): string {
	const exact = from?.exact.sessions ?? 0;
	const near = exact >= ENOUGH ? [] : (from?.near.slice(0, MOST_KINDS) ?? []);
	const all = [
		...(exact > 0 ? [`${counted(exact)} like this`] : []),
		...near.map(({ shares, sessions }) => OTHERS[shares](counted(sessions))),
		...(pulls > 0 ? [pulls === 1 ? 'one pull of this tube' : `${pulls} pulls of this tube`] : []),
	];
	const last = all.pop();
	if (last === undefined) return 'from mechanics alone';
	return `from ${all.length > 0 ? `${all.join(', ')} and ${last}` : last}`;
}

function counted(tubes: number): string {
	return tubes === 1 ? 'one tube' : `${tubes} tubes`;
}
