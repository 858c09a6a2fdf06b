/** Slips of the hand that are looked for by name: what a number most likely was, where it is not what was expected. */

import type { Units } from '../../tube/job.ts';
import { trimmed } from '../../units/format.ts';
import { convertLength } from '../../units/units.ts';
import type { NumberSlip } from '../protocol/facts/doubt.ts';

/** A slip explains a number where what it was then lies within so many standard deviations of what was expected. */
const EXPLAINED_WITHIN = 3;

/** What the number was, if one of the common slips made it what it is; null where none does. `units`: of a length; null for degrees. */
export function slipOf(
	value: number,
	expected: { value: number; sd: number },
	units: Units | null,
): { slip: NumberSlip; would: number } | null {
	const found = slipCandidates(value, units)
		.map((each) => ({ ...each, off: Math.abs(each.would - expected.value) }))
		.filter(({ off }) => off <= EXPLAINED_WITHIN * expected.sd)
		// Who leaves the point out of 15.5 types no digit twice.
		.sort((a, b) => Number(a.slip === 'doubled') - Number(b.slip === 'doubled') || a.off - b.off)[0];
	return found === undefined ? null : { slip: found.slip, would: found.would };
}

function slipCandidates(value: number, units: Units | null): { slip: NumberSlip; would: number }[] {
	const either = (slip: NumberSlip, by: number) => [value - by, value + by].map((would) => ({ slip, would }));
	const lengths =
		units === null
			? []
			: [
					...either('inch', convertLength(1, 'in', units)),
					...either('foot', convertLength(12, 'in', units)),
					...(['in', 'mm'] as const)
						.filter((other) => other !== units)
						.flatMap((other) => [convertLength(value, other, units), convertLength(value, units, other)])
						.map((would) => ({ slip: 'unit' as const, would })),
				];
	const digits = [
		{ slip: 'moved' as const, would: value / 10 },
		{ slip: 'moved' as const, would: value * 10 },
		...fromDigits(value, swappedAt).map((would) => ({ slip: 'swapped' as const, would })),
		...fromDigits(value, withoutAt).map((would) => ({ slip: 'doubled' as const, would })),
	];
	return [...lengths, ...either('ten', 10), ...digits];
}

/** The number as typed, changed at each place of its digits in turn. */
function fromDigits(value: number, change: (digits: string, at: number) => string | null): number[] {
	const text = trimmed(value, 4);
	return [...text].flatMap((_, at) => {
		const changed = change(text, at);
		return changed === null ? [] : [Number(changed)];
	});
}

const isDigit = (letter: string | undefined) => letter !== undefined && /\d/.test(letter);

/** The digit at that place changed over with the next one; a point between them stays where it is. */
function swappedAt(text: string, at: number): string | null {
	const next = text[at + 1] === '.' ? at + 2 : at + 1;
	if (!isDigit(text[at]) || !isDigit(text[next]) || text[at] === text[next]) return null;
	const letters = [...text];
	[letters[at], letters[next]] = [letters[next]!, letters[at]!];
	return letters.join('');
}

function withoutAt(text: string, at: number): string | null {
	return isDigit(text[at]) && text[at] === text[at + 1] ? text.slice(0, at) + text.slice(at + 1) : null;
}
