import type { TellsMost } from './protocol.ts';
import { EVIDENCE_OF } from './reading-words.ts';
import { MAY_FIT } from './verdict.ts';

/** Whether a finished tube fits, as a sentence. */
export function verdictWords(fits: boolean, chance: number | null): string {
	if (chance === null) return 'The tube does not fit: not every bend was made.';
	if (fits) return `The tube fits: ${inTen(chance)}.`;
	return mayFit(fits, chance)
		? `The tube may fit: ${inTen(chance)}.`
		: `The tube does not fit: ${inTen(chance)} that it does.`;
}

/** More likely than not, but not likely enough to be said to fit. */
export const mayFit = (fits: boolean, chance: number | null): boolean => !fits && chance !== null && chance >= MAY_FIT;

/** A chance as a person says it. */
export function inTen(chance: number): string {
	if (chance >= 0.95) return 'more than 9 in 10';
	return chance < 0.05 ? 'less than 1 in 10' : `about ${Math.min(9, Math.max(1, Math.round(10 * chance)))} in 10`;
}

/** The measurement that would tell most, as an invitation; none where the verdict stands. */
export function invitation(fits: boolean, chance: number | null, tells: TellsMost | null): string | null {
	if (tells === null || !mayFit(fits, chance)) return null;
	return `Measure the ${measurement(tells)}: that would tell most.`;
}

function measurement(tells: TellsMost): string {
	if (tells.kind === 'check') return `check "${tells.name}"`;
	return tells.kind === 'angle' ? `angle of bend ${tells.bend} again` : EVIDENCE_OF[tells.kind](tells.bend);
}
