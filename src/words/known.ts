import type { Known } from '../session/protocol/facts/index.ts';
import type { Sharing } from '../springback/history.ts';
import { oneOrMore } from './counted.ts';
import { listed } from './listed.ts';

/** Other combinations, by what they have in common with the one to be bent. `tubes`: how many there are, in words. */
const OTHERS: Readonly<Record<Sharing, (tubes: string) => string>> = {
	'bender and die': (tubes) => `${tubes} of other sizes on this die`,
	bender: (tubes) => `${tubes} on other dies of this bender`,
	tube: (tubes) => `${tubes} like this on other benders`,
	material: (tubes) => `${tubes} of this material on other benders`,
	nothing: (tubes) => `${tubes} of other kinds`,
};

/** What the springback is known from, as the end of a sentence: `from 3 tubes like this and 5 tubes on other dies of this bender`. */
export function knownWords({ tubes, near, pulls }: Known): string {
	const all = [
		...(tubes > 0 ? [`${oneOrMore(tubes, 'tube')} like this`] : []),
		...near.map((other) => OTHERS[other.shares](oneOrMore(other.tubes, 'tube'))),
		...(pulls > 0 ? [`${oneOrMore(pulls, 'pull')} of this tube`] : []),
	];
	return `from ${all.length === 0 ? "the tube's strength alone" : listed(all)}`;
}
