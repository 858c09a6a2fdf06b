import type { Action } from '../../session/protocol/action.ts';
import type { Advice, Ask } from '../../session/protocol/asks.ts';
import type { CheckKind, EvidenceKind, ReadingKind } from '../../session/protocol/kinds.ts';
import type { Note } from '../../session/protocol/notes.ts';
import type { Warning } from '../../tube/warnings.ts';

type WordsForEach<Union, Key extends keyof Union> = Record<Extract<Union[Key], string>, string>;

/** The questions, and how each is answered. */
export const ASKS: WordsForEach<Ask, 'ask'> = {
	set: 'put the tube in the die at mark, turned by tubeTurn. Answer {"ready":true}.',
	pull: 'pull until the dial shows stop under load. Answer {"loaded":18.5}.',
	measure: 'lay the angle finder on, readings times. Answer {"angle":15.1} or {"angles":[15.1,14.9]}.',
	confirm: 'a reading looks wrong: read the instrument again. Answer {"keep":true} or {"reading":15.1}.',
	check: 'measure the check called name. Answer {"reading":"6 21/32"} or {"skip":true}.',
	decide: 'say what becomes of the bend. Answer {"do":"accept"}, "pull", "relieve" or "scrap".',
};

export const NOTES: WordsForEach<Note, 'note'> = {
	session: 'how the session began: its id, its log, whether it was resumed',
	warnings: 'what to mind before the first bend, as in layout',
	corrected: 'new numbers for the bends left, and how the finished tube comes out',
	refused: 'the answer was not kept; why says what to send instead. The same ask follows',
	done: 'the tube is finished, or scrapped: what was made, what to cut off, whether it fits',
};

/** How each answer is written. */
export const ANSWERS: WordsForEach<Exclude<Action, { do: 'draft' }>, 'do'> = {
	ready: '{"ready":true}; may bring "pointer" (the dial now), "mark", "rotation", and at first "length" (of the piece)',
	still: '{"still":true}: at set from seat 2 on, the tube never left the die; the pull follows in the same seat',
	plan: '{"plan":"old"} keeps the numbers before the correction, {"plan":"new"} takes the new ones',
	loaded: '{"loaded":n}: the dial under load; may bring "released"',
	reseat: '{"reseat":true}: the tube has been out of the die',
	angles: '{"angle":n} or {"angles":[n,n]}: the angle finder',
	skip: '{"skip":true}: no measurement, no check',
	keep: '{"keep":true}: read again, it stands',
	reading: '{"reading":n}: the new number, or the check. Ovality also as {"reading":{"least":a,"greatest":b}}',
	accept: '{"do":"accept"}: take the bend as it is',
	pull: '{"do":"pull"}: pull it again',
	relieve: '{"do":"relieve"}: open it a little',
	scrap: '{"do":"scrap","why":"…"} at decide, {"scrap":"…"} anywhere',
	undo: '{"undo":true}: take the last answer back',
	amend: '{"amend":{"entry":n,"reading":x}}: correct a reading of that line; "of" says which if there are several',
	evidence: '{"evidence":{"kind":"…","bend":j,"reading":x}}: something else you measured',
	reopen: '{"reopen":{"bend":j,"do":"pull"}} or "relieve": go back to a made bend',
	heat: '{"heat":"…"}: the heat, lot or certificate number of this tube, where it is not the one kept so far',
	quit: '{"quit":true}: leave, to go on later',
};

export const EVIDENCE_LINES: Record<EvidenceKind, string> = {
	angle: 'the angle of bend j again',
	farEndToMark: "from the far end to bend j's mark",
	leg: 'the straight before bend j, tangent to tangent',
	mark: 'where the mark of bend j really was',
	rotation: 'how the plane of bend j really lies',
};

export const READING_LINES: Record<ReadingKind, string> = {
	loaded: 'dial under load',
	released: 'dial after release',
	pointer: 'dial with the tube snug',
	angle: 'angle finder',
	mark: 'where the mark is',
	rotation: 'how the tube is turned',
	length: 'length of the piece, or another length',
	check: 'a check of the job',
};

export const ADVICE: Record<Advice, string> = {
	accept: 'take it as it is',
	pull: 'pull it again',
	relieve: 'open it by open degrees',
	scrap: 'give the tube up',
	reopen: 'go back to bend of',
	measure: 'read again what of names',
};

export const CHECKS: Record<CheckKind, string> = {
	drop: 'a distance from the line of a straight',
	angle: 'an angle between two straights',
	span: 'from corner to corner, or to an end',
	out: 'how far out of a plane',
	width: 'how far apart two parallel straights run',
	overall: 'the size over all along an axis of bend 1',
	ovality: 'smallest over greatest diameter',
};

export const WARNINGS: Record<Warning['code'], string> = {
	'stock-short': 'the piece is shorter than the cut length',
	'no-room': 'the radius expected has no room between the corners',
	'tight-radius': 'the radius is under three diameters',
	'short-clamp': 'too little straight tube for the clamp',
	'dial-limit': 'the stop will lie past the largest angle on the dial',
	'short-follow': 'too little straight tube behind the last bend',
	'self-contact': 'the tube meets itself',
	'floor-contact': 'the made part meets the floor as it swings',
	'no-crown': 'nothing to find the highest point by; use "straight"',
};
