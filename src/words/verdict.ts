import type { TellsMost } from '../session/protocol/notes.ts';
import { mayFit } from '../session/report/verdict.ts';
import type { Job } from '../tube/job.ts';
import { capital } from '../units/format.ts';
import { bendsNamed } from './bend-name.ts';
import { inTen } from './chance.ts';
import { foreignName } from './foreign.ts';
import { bandOf } from './numbers.ts';
import { EVIDENCE_OF } from './readings.ts';

/** Whether a finished tube fits, as a sentence. */
export function verdictWords(fits: boolean, chance: number | null): string {
	if (chance === null) return 'The tube does not fit: not every bend was made.';
	if (fits) return `The tube fits: ${inTen(chance)}.`;
	return mayFit(fits, chance)
		? `The tube may fit: ${inTen(chance)}.`
		: `The tube does not fit: chance to fit ${10 * chance >= 4.5 ? 'less than 5 in 10' : inTen(chance)}.`;
}

/** Which bends are outside the drawing's own tolerance: another thing than whether the tube fits. */
export function outsideWords(outside: readonly number[], { tolerance }: Pick<Job, 'tolerance'>): string {
	const band = bandOf(tolerance);
	if (outside.length === 0) return `Every bend is inside the drawing's ${band}.`;
	return `${capital(bendsNamed(outside))} ${outside.length === 1 ? 'is' : 'are'} outside the drawing's ${band}.`;
}

/** The measurement that would tell most, as an invitation; none where the verdict stands. */
export function invitation(fits: boolean, chance: number | null, tells: TellsMost | null): string | null {
	if (tells === null || !mayFit(fits, chance)) return null;
	return `Measure the ${measurement(tells)}: that would tell most.`;
}

function measurement(tells: TellsMost): string {
	if (tells.kind === 'check') return `check "${foreignName(tells.name)}"`;
	return tells.kind === 'angle' ? `angle of bend ${tells.bend} again` : EVIDENCE_OF[tells.kind](tells.bend);
}
