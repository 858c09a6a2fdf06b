import type {
	AsideFact,
	DecideFact,
	DoubtFact,
	LoggedFact,
	MisreadFact,
	NotSavedFact,
	PullFact,
	Reason,
	RefusalFact,
	TwiceFact,
} from '../../session/protocol/facts/index.ts';
import type { TopicSection } from './topic.ts';

/** Every code of a family, so that a new one does not compile until it has its words. */
type Codes<Fact extends { code: string }> = Record<Fact['code'], string>;

const STOP: Codes<PullFact> = {
	'springback-expected': 'how far the tube should spring back, and to what',
	'chance-over': 'how likely the bend goes over',
	'dial-moved': 'no further than you held before: you said that the dial moved',
	'opened-since': 'no further than you held before: the bend was opened since',
	'dial-far-off': 'the stop rests on a dial that you said stands far too high',
	'stop-capped': 'the bender reaches no further',
};

const AGAIN: Codes<DoubtFact> = {
	'off-the-stop': 'held far from the stop',
	'above-the-dial': 'more than the dial was held at',
	'below-the-dial': 'far less than the dial was held at',
	'not-expected': 'far from what was expected',
	'not-as-made': 'not what this bend was measured as before',
	'turn-off': 'not the turn that was asked for',
	'check-off': 'far from what the check should read',
	'look-at': 'what to look at first',
	'length-off': 'not the length that was expected',
	'readings-differ': 'two readings of one bend disagree',
	slip: 'a common slip that would explain it',
	'explained-since': 'something told since explains it',
};

const ASIDE: Codes<AsideFact> = {
	'set-aside': 'these readings do not count',
	'check-contradicted': 'other readings speak against the check',
};

const TWICE: Codes<TwiceFact> = {
	'first-measurement': 'the first of this tube',
	'narrow-band': 'the tolerance is narrow',
	'many-wrong': 'many numbers were wrong here',
	'many-pulls': 'the bend has taken many pulls',
};

const ADVICE_CODES: Codes<DecideFact> = {
	'bend-made': 'what the bend is',
	'bend-inside': 'inside its tolerance',
	'bend-short': 'short of its tolerance',
	'bend-over': 'over its tolerance',
	'pull-again': 'pull it again',
	'near-enough': 'near enough after many pulls',
	'next-too-far': 'near enough, and a division more may pass the tolerance',
	'needed-closer': 'near enough by itself, and the tube needs it closer: pull it again',
	'touch-more': 'it would do by itself, and a little more makes the tube likelier to fit',
	'fresh-set-up': 'take it out, set it again and pull',
	'limit-reached': 'the bender reaches no further',
	'too-far-to-open': 'too far over to open',
	'opened-already': 'it was opened once before',
	'opening-forbidden': 'the job does not allow a bend to be opened',
	'go-easy-opening': 'open it gently',
	'open-by': 'open it by so much',
	'fits-only-opened': 'as it is the tube does not fit; opened it does',
	'left-unopened': 'over by too little to open it, though the tube would fit then',
	'checks-outside': 'checks that are outside',
	'taken-as-it-is': 'the bends left can take it up',
	'still-missed': 'what stays off if you take it',
	'reopen-would': 'what going back to a made bend would bring',
	nearest: 'the closest the tube can still get',
	'give-up': 'give the tube up',
	'stock-left': 'straight tube you can use again',
	'measure-first': 'what to measure again first',
	'does-not-go': 'readings that cannot all be right: which to take again',
};

const MISREAD: Codes<MisreadFact> = {
	'not-json': 'the line is no JSON',
	'not-an-object': 'the line is no JSON object',
	'empty-answer': 'there is no action in it',
	'note-no-text': '"note" is no text',
	'why-without-scrap': '"why" goes with scrap only',
	'several-actions': 'more than one action',
	'line-too-long': 'the line is too long',
	'nested-too-deep': 'objects or lists in one another',
	'list-too-long': 'more numbers than a list may hold',
	'key-twice': 'a key stands twice',
	'unknown-action': 'no such action',
	'does-not-go-with': 'a key that does not go with this action',
	'does-not-belong': 'a key that does not belong at this place',
	wants: 'what must stand at this place',
	'no-number': 'no number at this place',
	'no-reading-of': 'that line has no such reading',
};

const REFUSED: Codes<Exclude<RefusalFact, MisreadFact>> = {
	'nothing-to-undo': 'there is nothing to take back',
	finished: 'the session is finished',
	'must-measure': 'an opened bend must be measured',
	'measured-already': 'the bend is measured; decide',
	'no-correction-yet': 'there is one plan only',
	'leads-nowhere': 'nothing could be worked out any more with that answer',
	'text-too-long': 'a note or reason is too long',
	'length-too-late': 'the length goes with the first set-up',
	'may-not-open': 'the job does not allow a bend to be opened',
	'other-ask': 'the answer fits another ask',
	'limit-spent': 'another pull at the limit adds nothing',
	'pulled-already': 'the bend was pulled; send evidence instead',
	'seated-already': 'the bend was set; the plan stays',
	'no-such-bend': 'the tube has no such bend',
	'not-set-yet': 'the bend was not set yet',
	'not-made-yet': 'the bend is not made yet',
	'going-back-already': 'finish the bend you went back to',
	'not-still': 'the tube left the die, or another pull in this set-up adds nothing',
	'reading-waits': 'a reading waits to be read again',
	'off-the-piece': 'not on the piece',
	'no-such-line': 'the log has no such line',
	'line-undone': 'that line was taken back',
	'no-reading-there': 'no reading in that line',
	'several-readings-there': 'say which reading with "of"',
	'no-such-number': 'nothing of that kind can have that number',
	'not-pulled-yet': 'the bend was not pulled yet',
	'excluded-by-dial': 'the dial rules it out',
	'excludes-told': 'it rules out a reading told before',
	'cannot-open-so-far': 'too far to open',
	'machine-ends-before': 'the bender ends before that angle',
	'floor-in-the-way': 'the floor is in the way',
	'clamp-in-the-way': 'no room for the clamp',
	'follow-in-the-way': 'no room for the tube behind the bend',
};

const OTHER_CODES: Codes<LoggedFact | NotSavedFact> = {
	'not-saved': 'the disk refused; nothing was kept',
	'as-logged': 'a sentence from a log of an earlier version',
};

/** Every code that stands in `reason`. */
export const REASON_CODES: Codes<Reason> = {
	...STOP,
	...AGAIN,
	...ASIDE,
	...TWICE,
	...ADVICE_CODES,
	...MISREAD,
	...REFUSED,
	...OTHER_CODES,
};

/** The same by what they are about. */
export const REASON_SECTIONS: readonly TopicSection[] = [
	{ heading: 'Why this stop', rows: Object.entries(STOP) },
	{ heading: 'Why a reading is asked again', rows: Object.entries(AGAIN) },
	{ heading: 'What no longer counts', rows: Object.entries(ASIDE) },
	{ heading: 'Why two readings', rows: Object.entries(TWICE) },
	{ heading: 'Why that advice', rows: Object.entries(ADVICE_CODES) },
	{ heading: 'Why an answer was refused: not understood', rows: Object.entries(MISREAD) },
	{ heading: 'Why an answer was refused: not possible', rows: Object.entries(REFUSED) },
	{ heading: 'Besides', rows: Object.entries(OTHER_CODES) },
];
