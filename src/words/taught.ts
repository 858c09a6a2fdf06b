import type { Taught } from '../review/taught.ts';
import { foreignName } from './foreign.ts';
import { angle, dial } from './numbers.ts';

export const SHOWED = 'What the bender showed';
export const NEXT_TIME = 'Next time';

/** What one tube told of the machine, a sentence each. */
export function showedWords({ learns, springback, miss, stops }: Taught): string[] {
	const moved = stops.map(({ bend, was, now }) => `bend ${bend} at ${dial(now)}, not ${dial(was)}`);
	return [
		...(springback === null
			? []
			: [`Springback at 45°: ${angle(springback.shown)} by this tube, ${angle(springback.believed)} was expected.`]),
		...(miss === null ? [] : [missWords(miss)]),
		...(learns ? [] : ['Later tubes do not learn from this session.']),
		...(learns && springback !== null
			? [
					moved.length === 0
						? 'By this tube first pulls stop where they did.'
						: `By this tube first pulls would stop: ${moved.join('; ')}.`,
				]
			: []),
		...(springback === null && miss === null ? ['No pull was measured: it showed nothing of springback.'] : []),
	];
}

function missWords(miss: number): string {
	const size = angle(Math.abs(miss));
	if (size === angle(0)) return 'First pulls landed where they were expected.';
	return `First pulls landed ${size} ${miss < 0 ? 'short of' : 'past'} what was expected, on average.`;
}

/** What to do otherwise, a sentence each; `invitation`: the measurement that would tell most, where one would. */
export function nextTimeWords({ past, unmeasured, unread }: Taught, invitation: string | null): string[] {
	const words = [
		...past.map(({ bend, by }) => `Come to the stop slower: bend ${bend} was held ${dial(by)} past it.`),
		...unmeasured.map((bend) => `Put the angle finder on bend ${bend}: only the dial told what it is.`),
		...unread.map((name) => `Read check ${foreignName(name)}: it was left out.`),
		...(invitation === null ? [] : [invitation]),
	];
	return words.length === 0 ? ['Nothing to do otherwise.'] : words;
}
