import type { Ask } from '../../session/protocol/asks.ts';
import type { Note } from '../../session/protocol/notes.ts';

/** A word on every field of every line, so that a new field does not compile until it has one. */
type FieldsTold<Union, Key extends keyof Union> = {
	[Name in Extract<Union[Key], string>]: Record<
		Exclude<keyof Extract<Union, Record<Key, Name>>, Key | 'why' | 'reason' | 'cautions'>,
		string
	>;
};

/** What each ask carries besides `why` and `reason`. */
export const ASK_FIELDS: FieldsTold<Ask, 'ask'> = {
	set: {
		entry: 'number that the answer will have in the log',
		bend: 'which bend',
		bends: 'how many there are',
		target: 'the angle to make now',
		design: "the drawing's angle",
		seat: '1 at the first set-up of this bend',
		mark: 'fromStart, fromFarEnd, fromLastBend, tape (as the tape reads), moved (from the drawing)',
		rotation: 'from the plane of the bend before, as made',
		tubeTurn: 'degrees, and way as seen from the clamp',
		face: 'side of the tube: same, opposite or other',
		around: 'where the mark goes round the tube: degrees, length',
		die: 'the die it goes into, in a job of several dies',
		pointer: "the dial with the tube snug: at seat 1 this bender's zero",
		plan: 'new or old numbers',
		still: 'true where {"still":true} would be taken',
		was: 'target, fromStart, rotation before the correction',
	},
	pull: {
		entry: 'as above',
		bend: 'which bend',
		pull: 'counts from 1 in each bend',
		target: 'the angle to make now',
		design: "the drawing's angle",
		stop: 'dial to stop at, under load',
		lead: 'dial to ease up at, or null',
		expect: 'angle after release, and its sd',
		risk: 'chance to go over',
		limit: 'true where the bender ends the pull',
	},
	measure: {
		entry: 'as above',
		bend: 'which bend',
		expect: 'angle and sd',
		readings: 'how many are wanted: 1 or 2',
	},
	confirm: {
		entry: 'as above',
		of: 'what kind of reading',
		reading: 'the number in doubt',
		expect: 'value and sd',
		bend: 'which bend, if it is about one',
		name: 'which check, if it is about one',
		evidence: 'its kind, if it was evidence',
	},
	check: {
		entry: 'as above',
		name: 'as in the job',
		kind: 'what is measured',
		expect: 'value and sd',
		design: 'what the drawing has',
		tolerance: 'how far off it may be',
		includes: 'what the reading includes beyond the design',
	},
	decide: {
		entry: 'as above',
		bend: 'which bend',
		advice: 'what to do',
		of: 'with reopen the bend, with measure what to read again',
		made: 'angle and sd',
		target: 'the angle wanted',
		design: "the drawing's angle",
		how: 'with reopen: pull or relieve',
		open: 'with relieve: degrees to open by',
		to: 'with relieve: the angle to read then',
		limit: 'true at the largest angle of the bender',
		accepted: 'what comes of taking it',
		tweaks: 'what going back to a made bend would do, best first',
		rescue: 'the least bad, where nothing makes the tube fit',
	},
};

export const NOTE_FIELDS: FieldsTold<Note, 'note'> = {
	session: {
		id: 'name of the session',
		log: 'its file',
		resumed: 'true or false',
		job: 'name of the job',
		changed: 'where the job file differs from the job kept',
		others: "ids of the job's other unfinished sessions",
		piece: 'which piece of the job it is',
		quantity: 'how many are wanted',
		heat: 'heat, lot or certificate number of the tube',
		alike: 'whether it is cut and marked as the piece before',
		wouldMove: 'by how much its marks would move by what was learned since',
		bentAs: 'hand and end, if not as drawn',
	},
	warnings: { warnings: 'at, code, text of each' },
	corrected: {
		after: 'bend or entry',
		remaining: 'for each bend left: fromStart, angle, rotation, and was',
		predicted: 'endOffset, endAngle, shape, checks, each with sd, and chance',
		without: "the same with the drawing's numbers",
		mend: 'what the last bend can still mend',
	},
	refused: { code: 'not-understood, not-possible or not-saved' },
	done: {
		scrapped: 'true or false',
		bends: 'design, target, made, sd, pulls, seats of each',
		checks: 'name, design, reading of each',
		trim: 'to cut off: start, far end',
		endOffset: 'how far the far end is off',
		endAngle: 'how far its direction is off',
		sd: 'give or take of both',
		chance: 'that the tube truly fits',
		tellsMost: 'the measurement that would tell most, or null',
		shape: 'the corner farthest off: bend, off',
		outside: "bends outside the drawing's tolerance",
		fits: 'true or false',
		log: 'its file',
		cuts: 'where to cut each end',
		finish: 'what is left to do',
	},
};
