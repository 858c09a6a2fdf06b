import type { FinishFact } from '../session/protocol/facts/index.ts';
import type { Cut } from '../session/protocol/notes.ts';
import { copeWords } from './cope.ts';
import { checkValueWords } from './doubt.ts';
import { foreignName } from './foreign.ts';
import type { Ruled, Wording } from './lengths.ts';
import { angle, tape } from './numbers.ts';

/** What is left to be done and looked at before the tube leaves the bench. */
export function finishWords(fact: FinishFact, style: Wording): string {
	switch (fact.code) {
		case 'look-for-flats':
			return `Bend ${fact.bend} was opened: look for flats and cracks, and ask the inspector.`;
		case 'bend-outside':
			// Whether it is inside the drawing's own tolerance stands above.
			return `Bend ${fact.bend} is ${fact.made < fact.target ? 'short' : 'over'}: ${angle(fact.made)}, where ${angle(fact.target)} was wanted.`;
		case 'cope':
			return copeWords(fact, style);
		case 'deburr':
			return 'Deburr both ends inside and outside.';
		default: {
			const told = (value: number) => checkValueWords(value, fact.kind, style);
			const should = `it should be ${told(fact.design)}, within ${told(fact.tolerance)}`;
			if (fact.code === 'check-not-read')
				return `Check ${foreignName(fact.name)} was not read: ${should}; expected is ${told(fact.expected)}.`;
			if (fact.code === 'check-outside')
				return `Check ${foreignName(fact.name)} lies outside its tolerance: ${should}.`;
			return `Check ${foreignName(fact.name)} once more when the ends are cut: ${should}.`;
		}
	}
}

/** What is cut off at an end and where, as a tape reads. */
export function cutOffWords(cut: Cut, job: Ruled): string {
	const { off, fromTangent, fromCorner } = cut;
	const put = isCut(off, job) ? (off < 0 ? 'It should end' : 'Cut') : 'It ends';
	return `${offWords(cut, job)}. ${put} ${tape(fromTangent, job)} ${fromBend(cut)}, ${tape(fromCorner, job)} from its corner.`;
}

/** The same in a line. */
export function cutBrieflyWords(cut: Cut, job: Ruled): string {
	const { end, off, bend, fromTangent } = cut;
	const isWanted = off > 0 && isCut(off, job);
	const place = `, ${tape(fromTangent, job)} ${end === 'start' ? 'before' : 'behind'} bend ${bend}`;
	return `${offWords(cut, job)}${isWanted ? place : ''}.`;
}

/** How much goes off at which end. */
function offWords({ end, off }: Cut, job: Ruled): string {
	const name = end === 'start' ? 'Start end' : 'Far end';
	if (!isCut(off, job)) return `${name}: cut nothing off`;
	return off < 0 ? `${name}: cut nothing off, it is ${tape(-off, job)} short` : `${name}: cut off ${tape(off, job)}`;
}

const fromBend = ({ end, bend }: Cut) =>
	end === 'start' ? `before bend ${bend} begins` : `behind the end of bend ${bend}`;

/** Whether there is anything to cut off, or missing, that a tape would show. */
export const isCut = (off: number, job: Ruled): boolean => tape(off, job) !== tape(0, job);
