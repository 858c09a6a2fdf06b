import type { CorrectedNote } from '../../session/protocol/notes.ts';
import { inTen } from '../chance.ts';
import { type Ruled, shownUnits } from '../lengths.ts';
import { angle, fine, readingSpread } from '../numbers.ts';

/** What the page of a correction says. */
export const CORRECTED = {
	title: (note: CorrectedNote): string => (note.remaining.length === 0 ? 'The tube as made' : correctedAfter(note)),
	choices: { new: 'bend the rest by the new numbers', old: 'keep the old numbers' },
	plus: 'new numbers',
	empty: (choice: boolean): string =>
		choice ? 'Press + for the new numbers, or write the number of a choice and press Enter.' : 'Press + to go on.',
} as const;

function correctedAfter({ after: of }: CorrectedNote): string {
	return 'bend' in of ? `Corrected after bend ${of.bend}` : `Corrected after line ${of.entry}`;
}

/** Over the columns of the bends left, and under each of them its three numbers. */
export const GROUPS = {
	mark: (job: Ruled): string => `mark from the start end, ${shownUnits(job)}`,
	rotation: 'rotation, degrees',
	bend: 'bend, degrees',
	heads: ['drawn', 'before', 'now'],
} as const;

type Rotation = readonly [drawing: number, before: number, now: number];

/** A rotation that changed, where it has no columns of its own. */
export function rotationWords(bend: number, rotation: Rotation): string {
	const [drawing, before, now] = rotation.map(angle);
	return `bend ${bend} rotation: drawing ${drawing}, before ${before}, now ${now}`;
}

/** The same of all that changed, in as few words as can be. */
export function rotationsWords(all: readonly { bend: number; rotation: Rotation }[]): string {
	const told = all.map(({ bend, rotation: [, before, now] }) => `bend ${bend} ${angle(now)} (${angle(before)})`);
	return `rotation now (before): ${told.join(', ')}`;
}

/** The table of the finished tube. */
export const FINISHED = {
	title: 'The finished tube',
	heads: { drawing: 'drawing', uncorrected: 'uncorrected', now: 'now', made: 'made' },
	end: 'far end off by',
	direction: 'its direction off by',
} as const;

/** How far off the far end may be in truth, and whether the tube will fit; `brief`: for one line; `fits`: the last of it alone; `least`: that and the farthest corner in a line. */
export function surenessWords(
	{ remaining, predicted, without }: CorrectedNote,
	job: Ruled,
): { whole: string; brief: string; fits: string; least: string } {
	const { sd, shape } = predicted;
	const place = readingSpread(sd.endOffset, 'length', job);
	const direction = readingSpread(sd.endAngle, 'angle', job);
	const chance = inTen(predicted.chance);
	const before = remaining.length === 0 ? '' : ` (uncorrected ${inTen(without.chance)})`;
	return {
		whole: `Far end give or take ${place} and ${direction}. Chance to fit: ${chance}${before}.`,
		brief: `Far end give or take ${place}, ${direction}. Fits: ${chance}.`,
		fits: `Fits: ${chance}${before}.`,
		least: `Farthest: corner ${shape.bend}, ${fine(shape.off, job)} off. Fits: ${chance}.`,
	};
}

/** A correction that is no page of its own. */
export const QUIETLY_CORRECTED = 'New numbers for the bends left: none moved by more than tape and dial show.';
