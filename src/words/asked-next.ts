import type { Ask, DecideAsk } from '../session/protocol/asks.ts';
import { foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { dial } from './numbers.ts';
import { readingName } from './readings.ts';
import { askedForWords } from './set-up.ts';

export const ADVISED: Record<DecideAsk['advice'], string> = {
	accept: 'take it',
	pull: 'pull it again',
	relieve: 'open it a little',
	scrap: 'give the tube up',
	reopen: 'go back to a made bend',
	measure: 'measure again first',
};

/** What was asked at that point of a session, in a few words; null: nothing, it was over. */
export function askedNextWords(ask: Ask | null, style: Wording): string {
	if (ask === null) return 'Nothing more was asked: the session was over.';
	switch (ask.ask) {
		case 'set': {
			const asked = askedForWords({ mark: ask.mark, turn: ask.tubeTurn }, style);
			return `Asked next: set the tube at bend ${ask.bend}, ${asked}.`;
		}
		case 'pull':
			return `Asked next: pull ${ask.pull} of bend ${ask.bend}, stop at ${dial(ask.stop)}.`;
		case 'measure':
			return `Asked next: measure bend ${ask.bend}.`;
		case 'confirm':
			return `Asked next: read it again (${readingName(ask)}).`;
		case 'check':
			return `Asked next: check "${foreignName(ask.name)}".`;
		case 'decide':
			return `Asked next: decide on bend ${ask.bend}. The advice was: ${ADVISED[ask.advice]}.`;
	}
}
