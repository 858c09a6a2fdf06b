import type { FinishFact } from '../session/protocol/facts/index.ts';
import type { Cut } from '../session/protocol/notes.ts';
import { copeWords } from './cope.ts';
import { checkValueWords } from './doubt.ts';
import { foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { angle, fine } from './numbers.ts';

/** What is left to be done and looked at before the tube leaves the bench. */
export function finishWords(fact: FinishFact, style: Wording): string {
	switch (fact.code) {
		case 'look-for-flats':
			return `Bend ${fact.bend} was opened: look for flats and cracks, and ask the inspector.`;
		case 'bend-outside':
			return `Bend ${fact.bend} is ${angle(fact.made)}, outside its tolerance: ${angle(fact.target)} was wanted.`;
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

/** Where an end is cut. */
export function cutOffWords({ end, off, bend, fromTangent, fromCorner }: Cut, style: Wording): string {
	const where = end === 'start' ? `where bend ${bend} begins` : `where bend ${bend} ends`;
	const leg = `${fine(fromTangent, style)} from ${where}, ${fine(fromCorner, style)} from its corner`;
	const name = end === 'start' ? 'Start end' : 'Far end';
	return off < 0
		? `${name}: nothing to cut off, the leg is ${fine(-off, style)} short: ${leg}.`
		: `${name}: cut off ${fine(off, style)}: ${leg}.`;
}
