import type { AgainstFact, DecideFact, Missed } from '../session/protocol/facts/index.ts';
import { isInside } from '../tube/tolerance.ts';
import { capital } from '../units/format.ts';
import { BURNT } from '../units/tape.ts';
import type { Units } from '../units/units.ts';
import { GO_EASY } from './caution.ts';
import { inHundred, inTen } from './chance.ts';
import { checkValueWords } from './doubt.ts';
import { foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { listed } from './listed.ts';
import { about, angle, exactAngle, fine, notNothing, shortOrOver } from './numbers.ts';
import { againLabel } from './session/again.ts';

const NOT_FITTING = 'As it is, the tube does not fit.';
const TAKE_IT = 'Take it: the program corrects the rest for it.';

/** Why that is advised for the bend at work. */
export function decideWords(fact: DecideFact, style: Wording): string {
	switch (fact.code) {
		case 'bend-short':
			return `${angle(fact.by)} short.`;
		case 'bend-over':
			return `${angle(fact.by)} over.`;
		case 'bend-inside':
			return insideWords(fact.chance);
		case 'bend-made':
			return `Made ${angle(fact.angle)}, give or take ${about(fact.sd)}; wanted ${angle(fact.target)}.`;
		case 'pull-again':
			return 'Pull again.';
		case 'fresh-set-up':
			return "The last pull stopped at the bender's largest angle. A new set-up may still add a little.";
		case 'limit-reached':
			return `The bender reaches no further, and the last set-up added less than a dial step. ${TAKE_IT}`;
		case 'near-enough':
			return `Near its tolerance after ${fact.pulls} pulls. ${TAKE_IT}`;
		case 'next-too-far':
			return `Near its tolerance, and a division more would likely pass it (chance ${inHundred(fact.chance)}). ${TAKE_IT}`;
		case 'needed-closer':
			return `Pull again: the tube needs this bend closer. A division more may pass its tolerance (chance ${inHundred(fact.chance)}).`;
		case 'open-by':
			return `Open it by ${angle(fact.by)}, to ${angle(fact.to)}.`;
		case 'fits-only-opened':
			return NOT_FITTING;
		case 'left-unopened':
			return `Take it, or open it to ${angle(fact.to)} if the tube has to fit: that is the last resort. ${NOT_FITTING}`;
		case 'go-easy-opening':
			return GO_EASY;
		case 'too-far-to-open':
			return 'That is too far to work back: give the tube up.';
		case 'opened-already':
			return `It was opened already. ${TAKE_IT}`;
		case 'opening-forbidden':
			return `The job does not allow a bend to be opened. ${TAKE_IT}`;
		case 'checks-outside':
			return `Outside its tolerance: ${fact.names.map(foreignName).join(', ')}.`;
		case 'taken-as-it-is':
			return takenWords(fact);
		case 'still-missed':
			return `${capital(missedWords(fact, style))}.`;
		case 'reopen-would': {
			const { bend, by, before, chance } = fact;
			return `${exactAngle(by)} more in bend ${bend}: chance to fit ${inTen(chance)} instead of ${inTen(before)}.`;
		}
		case 'touch-more': {
			const { by, to, before, chance } = fact;
			return `Give this bend a touch more: ${exactAngle(by)}, to ${angle(to)}. Chance to fit ${inTen(chance)} instead of ${inTen(before)}.`;
		}
		case 'nearest':
			return nearestWords(fact);
		case 'give-up':
			return 'That is not the tube of the drawing: give it up.';
		case 'stock-left': {
			const anew = fact.again ? ', enough to start the whole tube over' : '';
			return `Straight and good for use: ${notNothing(fact.behind, style)} behind the last bend${anew}, ${notNothing(fact.before, style)} before the first.`;
		}
		case 'measure-first':
			return firstWords(fact);
		case 'does-not-go':
			return againstWords(fact, style);
	}
}

/** It is neither over nor short for sure; where it is not surely inside either, another reading tells most. */
function insideWords(chance: number): string {
	const inside = `nside its tolerance (chance ${inHundred(chance)})`;
	return chance < 0.5 ? `Perhaps i${inside}: measure again to know better.` : `I${inside}.`;
}

const ONE_READING = {
	scrap: 'never give a tube up on one reading.',
	open: 'never open a bend on one reading.',
	'go-back': 'never go back to a bend on one reading.',
	take: 'it read far from what was expected.',
} as const;

const BEFORE = {
	open: 'open a bend',
	'go-back': 'go back to a bend',
} as const;

/** What to measure again before anything rests on it. */
function firstWords(fact: Extract<DecideFact, { code: 'measure-first' }>): string {
	if (fact.again === undefined) return `Measure bend ${fact.bend} again: ${ONE_READING[fact.before]}`;
	return `Before you ${BEFORE[fact.before]}, ${againLabel(fact.again)}: little else shows it.`;
}

function takenWords({ angle: made, target, last }: Extract<DecideFact, { code: 'taken-as-it-is' }>): string {
	const short = made < target;
	const need = short ? 'needs no further pull' : 'need not be opened';
	return `Take it. It is ${shortOrOver(made - target)}, but ${need}: ${last ? 'the tube fits with it' : 'the bends left take it up'}.`;
}

const BURNT_WORDS: Readonly<Record<Units, string>> = { in: 'An inch', mm: `${BURNT.mm} mm` };

/** What goes against what, and which of them to measure again. */
function againstWords({ again, value, check, burnt }: AgainstFact, style: Wording): string {
	const { kind, bend, name } = again;
	const what = check === undefined ? 'What was measured' : checkOff(check, style);
	switch (kind) {
		case 'angle':
			return `${what} and does not go with ${angle(value)} at bend ${bend}: measure bend ${bend} again.`;
		case 'check':
			return `${what} and does not go with the bends as measured: read the ${foreignName(name ?? '')} again.`;
		case 'mark':
			return `${what} and does not go with the mark of bend ${bend}: measure where that mark really is.${burnt ? ` ${BURNT_WORDS[burnt]} held on the end and forgotten would explain it.` : ''}`;
		case 'rotation':
			return `${what} and does not go with the turn of bend ${bend}: read back how bend ${bend} really lies.`;
	}
}

function checkOff({ name, kind, reading, off, tolerance }: NonNullable<AgainstFact['check']>, style: Wording): string {
	const shown = foreignName(name);
	if (isInside(off, tolerance)) return `The ${shown} reads ${checkValueWords(reading, kind, style)}`;
	return `The ${shown} is ${checkValueWords(Math.abs(off), kind, style)} ${off < 0 ? 'low' : 'high'}`;
}

/** What is missed, the far end first. */
export function missedWords(missed: Missed, style: Wording): string {
	const { corner, checks } = missed;
	const off = corner
		? [`the corner of bend ${corner.bend} is ${fine(corner.off, style)} off (${fine(corner.tolerance, style)} allowed)`]
		: [];
	const outside = checks.map(({ name, kind, off: by, tolerance }) => {
		const way = by < 0 ? 'low' : 'high';
		const [is, may] = [Math.abs(by), tolerance].map((value) => checkValueWords(value, kind, style));
		return `the ${foreignName(name)} is ${is} ${way} (${may} allowed)`;
	});
	const all = [...farEndWords(missed, off.length + outside.length > 0, style), ...off, ...outside];
	return all.length === 0 ? 'the far end is where it belongs' : all.join(', ');
}

/** How far the far end is off; nothing where no instrument shows it, nor, beside what is outside its tolerance (`beside`), where that is inside. */
function farEndWords({ endOffset, endAngle, endAllowed }: Missed, beside: boolean, style: Wording): string[] {
	const part = (off: number, allowed: number, from: string, worded: (value: number) => string) => {
		const inside = isInside(off, allowed);
		if (inside && (beside || worded(off) === worded(0))) return [];
		return [`${worded(off)} from its ${from}${inside ? '' : ` (${worded(allowed)} allowed)`}`];
	};
	const parts = [
		...part(endOffset, endAllowed.place, 'place', (value) => fine(value, style)),
		...part(endAngle, endAllowed.direction, 'direction', angle),
	];
	return parts.length === 0 ? [] : [`the far end is ${listed(parts)}`];
}

/** How near the tube can still come: what taking the bend comes to is told beside it, another way only as what it would bring. */
function nearestWords(fact: Extract<DecideFact, { code: 'nearest' }>): string {
	const { fits, how } = fact;
	if (how === 'accept') return fits ? 'Ends and checks could still be met with this bend as it is.' : NOT_FITTING;
	return `${fits ? 'Ends and checks could still be met' : 'It would come closest'} by ${nearestWayWords(fact)}.`;
}

function nearestWayWords({ how, bend, by }: Extract<DecideFact, { code: 'nearest' }>): string {
	if (how === 'relieve') return 'opening this bend to what is wanted';
	if (by === undefined) return `going back to bend ${bend}`;
	return `going back to bend ${bend} and ${by > 0 ? 'pulling' : 'opening'} it by ${exactAngle(Math.abs(by))}`;
}
