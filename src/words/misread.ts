import type { MisreadFact, Wanted } from '../session/protocol/facts/index.ts';
import { EVIDENCE_KINDS } from '../session/protocol/measured-in.ts';
import { foreign, foreignName } from './foreign.ts';
import { listed } from './listed.ts';
import { cannotBeRead, unitsFaultWords } from './units.ts';

/** What could not be read of an answer, and what is right there. */
export function misreadWords(fact: MisreadFact): string {
	switch (fact.code) {
		case 'not-json':
			return 'The line is not JSON: an answer is one JSON object on one line, such as {"ready":true}.';
		case 'not-an-object':
			return 'An answer is one JSON object, such as {"ready":true}.';
		case 'empty-answer':
			return 'The answer is empty: give one action, or a note.';
		case 'note-no-text':
			return '"note" is a text, such as {"note":"jaws cleaned"}.';
		case 'why-without-scrap':
			return '"why" goes with {"do":"scrap"} only.';
		case 'line-too-long':
			return `The line is longer than ${kilobytes(fact.most)}: send one answer a line, and a long note in parts.`;
		case 'nested-too-deep':
			return `The answer is nested deeper than ${fact.most} levels: an answer is one flat JSON object, such as {"ready":true}.`;
		case 'list-too-long':
			return `The list holds more than ${fact.most} numbers: give the independent readings alone, one or two.`;
		case 'key-twice':
			return `${quoted([fact.key])} stands twice: write each key once.`;
		case 'several-actions':
			return `One answer holds one action; this one has ${listed(fact.actions)}.`;
		case 'unknown-action':
			return `No action is called ${quoted(fact.keys)}: the actions are ${fact.actions.join(', ')}.`;
		case 'does-not-go-with':
			return `${quoted(fact.keys)} does not go with "${fact.action}": leave it out.`;
		case 'does-not-belong':
			return `${quoted(fact.keys)} does not belong in "${fact.place}": leave it out.`;
		case 'wants':
			return `"${fact.place}" is ${RIGHT_WORDS[fact.wants]}.`;
		case 'no-number':
			return `"${fact.place}": ${cannotBeRead(fact.text, unitsFaultWords(fact.fault, fact.wanted))}`;
		case 'no-reading-of':
			return `Line ${fact.line} of the log holds no reading of ${foreign(fact.of)}.`;
	}
}

const RIGHT_WORDS: Record<Wanted, string> = {
	true: 'true or left out',
	plan: '"old" or "new"',
	do: '"accept", "pull", "relieve" or "scrap"',
	list: 'a list of one or more numbers',
	number: 'a number, or a text such as "31 1/2"',
	ratio: 'the ratio, or {"least":a,"greatest":b} with a above 0 and not above b',
	whole: 'a whole number from 1',
	reason: 'a text that says why, such as "kinked at bend 2"',
	heat: 'the number on the tube or its certificate, such as "H 4471", at most 80 characters on one line',
	amend: '{"entry":n,"reading":x}',
	evidence: '{"kind":…,"bend":j,"reading":x}',
	'evidence-kind': `one of ${EVIDENCE_KINDS.join(', ')}`,
	reopen: '{"bend":j,"do":"pull"} or {"bend":j,"do":"relieve"}',
};

const kilobytes = (bytes: number) => `${bytes / 1024} kB`;

const quoted = (keys: readonly string[]) => keys.map((key) => `"${foreignName(key)}"`).join(', ');
