import type { PullFact } from '../session/protocol/facts/index.ts';
import { inHundred } from './chance.ts';
import { knownWords } from './known.ts';
import { about, angle, dial } from './numbers.ts';

/** Why the tube is to be pulled to this stop. */
export function pullWords(fact: PullFact): string {
	switch (fact.code) {
		case 'springback-expected':
			return springbackTexts(fact).join(' ');
		case 'chance-over':
			return `Chance of going over ${angle(fact.limit)}: ${inHundred(fact.chance)}.`;
		case 'dial-moved': {
			const { held, by } = fact;
			const way = by < 0 ? 'lower' : 'higher';
			return `The dial stands ${angle(Math.abs(by))} ${way} than before, so this stop counts for more than the ${dial(held)} held before.`;
		}
		case 'opened-since':
			return `The bend was opened since it was held at ${dial(fact.held)}.`;
		case 'dial-far-off':
			return `You said that the dial stands ${angle(fact.by)} higher than expected. Unless somebody turned it, take that number back before you pull.`;
		case 'stop-capped':
			return 'The bender reaches no further.';
	}
}

/** What to expect of the pull; and where the dial's zero is, and what all that is known from. */
export function springbackTexts(
	fact: Extract<PullFact, { code: 'springback-expected' }>,
): [expected: string, known: string] {
	const { by, to, sd, known, zero } = fact;
	const expected = `Should spring back about ${angle(by)} and end near ${angle(to)}, give or take ${about(sd)}.`;
	const dialAt = zero === undefined ? '' : `The dial's zero, ${dial(zero)}, is in the stop. `;
	const unknown = known.tubes === 0 && known.near.length === 0 && known.pulls === 0;
	return [
		expected,
		`${dialAt}${unknown ? 'First pull on an unknown tube: short on purpose.' : `Known ${knownWords(known)}.`}`,
	];
}
