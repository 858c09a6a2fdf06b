import type { ExcludedFact, HindranceFact, NumberFault, RefusalFact } from '../session/protocol/facts/index.ts';
import type { AskKind } from '../session/protocol/kinds.ts';
import { checkValueWords, doubtWords } from './doubt.ts';
import { foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { misreadWords } from './misread.ts';
import { angle, dial, exactAngle, fine, measureOf, notNothing, shown, tape } from './numbers.ts';
import { READINGS } from './readings.ts';

/** Why an answer is not taken, and what to do instead. */
export function refusalWords(fact: RefusalFact, style: Wording): string {
	switch (fact.code) {
		case 'nothing-to-undo':
			return 'There is nothing to take back.';
		case 'finished':
			return 'The session is finished: only undo, amend and quit are taken.';
		case 'must-measure':
			return 'Measure the bend and give its angle: only that tells how far it was opened.';
		case 'measured-already':
			return 'The bend is measured. Say what to do: {"do":"accept"}, "pull", "relieve" or "scrap".';
		case 'no-correction-yet':
			return 'There was no correction yet: there is one plan only.';
		case 'leads-nowhere':
			return 'Nothing could be worked out any more with that answer. Read again, or take back or correct the readings that were kept against what was expected.';
		case 'text-too-long':
			return `The text is longer than ${fact.most / 1024} kB: write it shorter, or in several notes.`;
		case 'length-too-late':
			return 'The length of the piece is taken at the first set-up only.';
		case 'may-not-open':
			return 'Take the bend, pull it further or scrap the tube: this job does not allow a bend to be opened (mayOpen is false).';
		case 'other-ask':
			return `"${fact.action}" does not answer the open ask "${fact.ask}": give ${ANSWERED_BY[fact.ask]}.`;
		case 'limit-spent':
			return `The last set-up stopped at the bender's largest angle (${dial(fact.maxAngle)}) and added less than a dial step. Another pull cannot add more: take the bend, or scrap the tube.`;
		case 'pulled-already':
			return `Bend ${fact.bend} has been pulled. Tell where its mark or plane really was as evidence: {"evidence":{"kind":"mark","bend":${fact.bend},"reading":n}}.`;
		case 'seated-already':
			return `Bend ${fact.bend} was set already: choose the plan before a bend's first set-up.`;
		case 'no-such-bend':
			return `Bend ${fact.bend} does not exist: this tube has ${fact.bends}.`;
		case 'not-set-yet':
			return `Bend ${fact.bend} was not set yet: there is nothing on the tube to measure there.`;
		case 'not-made-yet':
			return `Bend ${fact.bend} is not made yet: you can go back only to a bend that you took.`;
		case 'going-back-already':
			return `You went back to bend ${fact.bend}: take it first.`;
		case 'not-still':
			return `${NOT_STILL[fact.since]} Set the tube and answer {"ready":true}.`;
		case 'reading-waits':
			return 'A reading waits to be read again: answer that first.';
		case 'off-the-piece':
			return `${notNothing(fact.value, style)} does not lie on the piece, which is ${tape(fact.piece, style)} long: measure again.`;
		case 'no-such-line':
			return `There is no line ${fact.line} of the log: this session has lines 1 to ${fact.lines}.`;
		case 'line-undone':
			return `Line ${fact.line} of the log was taken back: it does not count and cannot be amended.`;
		case 'no-reading-there': {
			const of = fact.of === undefined ? '' : ` of "${fact.of}", only ${fact.kinds.join(', ')}`;
			return `Line ${fact.line} of the log holds no reading${of}.`;
		}
		case 'several-readings-there':
			return `Line ${fact.line} of the log holds several readings: say which with "of", one of ${fact.kinds.join(', ')}.`;
		case 'no-such-number': {
			const { of, name, kind, value, why } = fact;
			const told = kind ? checkValueWords(value, kind, style) : shown(value, measureOf(of, style, name), style);
			return `${told} cannot be the ${kind ? `check "${foreignName(name ?? '')}"` : READINGS[of]}: ${FAULTS[why]}`;
		}
		case 'not-pulled-yet':
		case 'excluded-by-dial':
		case 'excludes-told':
			return excludedWords(fact, style);
		case 'cannot-open-so-far':
		case 'machine-ends-before':
		case 'floor-in-the-way':
		case 'clamp-in-the-way':
		case 'follow-in-the-way':
			return hindranceWords(fact, style);
		default:
			return misreadWords(fact);
	}
}

/** What answers each ask. */
const ANSWERED_BY: Record<AskKind, string> = {
	set: '{"ready":true} or {"plan":"old"}',
	pull: '{"loaded":n} or {"reseat":true}',
	measure: '{"angle":n} or {"skip":true}',
	confirm: '{"keep":true} or {"reading":n}',
	check: '{"reading":n} or {"skip":true}',
	decide: '{"do":"accept"}, "pull", "relieve" or "scrap"',
};

const NOT_STILL: Record<Extract<RefusalFact, { code: 'not-still' }>['since'], string> = {
	'never-set': 'This bend was not in the die yet.',
	'taken-out': 'The tube has been out of the die since the last pull.',
	opened: 'The bend was opened since the last pull.',
	limit: "The last pull stopped at the bender's largest angle: only a new set-up can add a little.",
};

const FAULTS: Record<NumberFault, string> = {
	'above-0': 'a length is above 0.',
	'angle-0-to-360': 'an angle lies from 0 to 360 degrees.',
	'dial-to-360': 'a dial shows at most 360 degrees.',
	'turn-to-360': 'a turn is at most 360 degrees either way.',
	'at-most-100-m': 'no tape is longer than 100 m. See that the unit is right.',
	'ratio-0-to-1': 'the least diameter over the greatest lies above 0 and not above 1.',
	'not-below-0': 'this distance is not below 0.',
};

/** Why a number is none of its kind, to stand after it. */
export const numberFaultWords = (fault: NumberFault): string => FAULTS[fault];

function excludedWords(fact: ExcludedFact, style: Wording): string {
	if (fact.code === 'not-pulled-yet')
		return `Bend ${fact.bend} was not pulled, so there is no angle to measure. If it was, give that pull first.`;
	const { of, bend, held, line } = fact;
	const value = exactAngle(fact.value);
	if (fact.code === 'excludes-told') {
		const says = of === 'angle' ? `Bend ${bend} measured ${value}` : `The dial showed ${value} after release`;
		const where = line === null ? '' : ` (line ${line} of the log)`;
		const first = line === null ? '' : ` Correct line ${line} first if that is wrong.`;
		return `${says}${where}, so it cannot have been held at ${exactAngle(held)}.${first} If both are wrong, take them back and give both again.`;
	}
	const cannot = of === 'angle' ? `bend ${bend} cannot measure ${value}` : `it cannot show ${value} after release`;
	const at = `The dial was held at ${exactAngle(held)}`;
	if (line === null)
		return `${at}, so ${cannot}. ${fact.settling ? 'Read the dial again, or take the last answer back and give both again.' : 'Read both again.'}`;
	const inside = fact.inside === undefined ? '' : ` Was it read on the inside? Then it is ${exactAngle(fact.inside)}.`;
	const slip = fact.slip === undefined ? '' : ` ${doubtWords({ code: 'slip', ...fact.slip, measure: 'angle' }, style)}`;
	const pull = fact.which === 'above' ? 'the tube was pulled further' : 'the pull ended sooner';
	const again = of === 'angle' ? 'Measure' : 'Read it';
	return `${at} (line ${line} of the log), so ${cannot}.${inside}${slip} ${again} again, or correct line ${line} if ${pull}.`;
}

function hindranceWords(fact: HindranceFact, style: Wording): string {
	switch (fact.code) {
		case 'cannot-open-so-far':
			return `Bend ${fact.bend} cannot be opened by ${angle(fact.by)}.`;
		case 'machine-ends-before':
			return `The bender ends before bend ${fact.bend} could be pulled to ${angle(fact.angle)}.`;
		case 'floor-in-the-way':
			return fact.depth === undefined
				? `At bend ${fact.bend} the tube would come down to the floor, depending on the side of the die.`
				: `The made part would hang ${fine(fact.depth, style)} below the die's plane at bend ${fact.bend}: the floor is ${fine(fact.floor, style)} below it.`;
		case 'clamp-in-the-way':
			return `Only ${notNothing(fact.is, style)} of straight tube lies before bend ${fact.bend}: the clamp needs ${fine(fact.needs, style)}.`;
		case 'follow-in-the-way':
			return `Only ${notNothing(fact.is, style)} of straight tube lies behind bend ${fact.bend}, up to bend ${fact.bend + 1}: ${fine(fact.needs, style)} is needed there.`;
	}
}
