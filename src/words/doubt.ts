import { roundedTo } from '../maths/scalar.ts';
import type { NumberSlip } from '../session/protocol/facts/doubt.ts';
import type { AsideFact, DoubtFact, Slip, TwiceFact } from '../session/protocol/facts/index.ts';
import type { CheckKind } from '../session/protocol/kinds.ts';
import { measuredIn } from '../session/protocol/measured-in.ts';
import { foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { listed } from './listed.ts';
import { about, angle, dial, notNothing, shown, tape } from './numbers.ts';
import { READINGS } from './readings.ts';

/** What a check is read with. */
export const TOOL: Record<CheckKind, string> = {
	drop: 'straight edge',
	out: 'straight edge',
	angle: 'angle finder',
	span: 'tape',
	width: 'tape',
	overall: 'tape',
	ovality: 'caliper',
};

const SLIPS: Record<NumberSlip, string> = {
	inch: 'it is an inch off',
	ten: 'it is ten off',
	foot: 'it is a foot off',
	unit: 'it was told in the other unit',
	moved: 'the point stands in the wrong place',
	swapped: 'two digits are swapped',
	doubled: 'a digit was typed twice',
};

/** Why a reading is asked again. */
export function doubtWords(fact: DoubtFact, style: Wording): string {
	switch (fact.code) {
		case 'off-the-stop':
			return `The stop was ${dial(fact.stop)}. This is ${dial(Math.abs(fact.value - fact.stop))} away from it.`;
		case 'above-the-dial':
		case 'below-the-dial': {
			const { code, value, held, inside } = fact;
			const than = code === 'above-the-dial' ? 'more than the dial ever showed' : 'far below what the dial showed';
			const hint = inside === undefined ? '' : ` Read on the inside? Then it is ${angle(inside)}.`;
			return `${angle(value)} is ${than} under load (${angle(held)}).${hint}`;
		}
		case 'not-expected':
			return `${angle(fact.expected)} was expected, give or take ${about(fact.sd)}.`;
		case 'not-as-made':
			return `Bend ${fact.bend} was taken to be ${angle(fact.angle)}. This is ${angle(Math.abs(fact.value - fact.angle))} away.`;
		case 'turn-off':
			return `The turn asked for was ${angle(fact.asked)}. This is ${angle(fact.off)} away from it.`;
		case 'check-off': {
			const told = (value: number) => checkValueWords(value, fact.kind, style);
			const off = told(Math.abs(fact.value - fact.expected));
			return `${told(fact.expected)} was expected from what is made. This is ${off} away.`;
		}
		case 'look-at':
			return lookAtWords(fact, style);
		case 'length-off': {
			const off = fact.value - fact.expected;
			const way = off > 0 ? 'longer' : 'shorter';
			return `${notNothing(fact.expected, style)} was expected. This is ${notNothing(Math.abs(off), style)} ${way}.`;
		}
		case 'readings-differ':
			return `The readings ${listed(fact.values.map(dial))} differ by more than ${angle(fact.most)}. Measure again.`;
		case 'slip': {
			const { slip, would, measure } = fact;
			return `Is it ${measure === 'length' ? notNothing(would, style) : dial(roundedTo(would, 2))}? Then ${SLIPS[slip]}.`;
		}
		case 'explained-since':
			return 'It goes with what was told since. If it still reads the same, it stands.';
	}
}

function lookAtWords(
	{ kind, bend, angle: made, slip }: Extract<DoubtFact, { code: 'look-at' }>,
	style: Wording,
): string {
	if (kind === 'ovality') return 'Measure again.';
	const against =
		bend === undefined || made === undefined
			? 'Measure again'
			: `It does not go with ${angle(made)} at bend ${bend}. Measure again`;
	const lies = `${against}, and see that the ${TOOL[kind]} lies where the check says.`;
	return slip === undefined ? lies : `${lies} Or ${slipWords(slip, style)}`;
}

function slipWords({ of, bend, was, would }: Slip, style: Wording): string {
	return of === 'rotation'
		? `does the plane of bend ${bend} lie at ${angle(would)}, not ${angle(was)}?`
		: `was the mark of bend ${bend} at ${tape(would, style)}, not ${tape(was, style)}?`;
}

/** What does not count any more. */
export function asideWords(fact: AsideFact, style: Wording): string {
	if (fact.code === 'check-contradicted') {
		const { name, kind, value } = fact;
		return `Set aside: check "${foreignName(name ?? '')}", ${checkValueWords(value, kind, style)}. It does not go with what was told since.`;
	}
	const { of, values, name, kind } = fact;
	const measure = measuredIn(of, kind);
	const what = of === 'check' ? `check "${foreignName(name ?? '')}"` : READINGS[of];
	return `Set aside: ${what}, ${listed(values.map((value) => shown(value, measure, style)))}.`;
}

/** Why two readings are wanted. */
export function twiceWords(fact: TwiceFact): string {
	switch (fact.code) {
		case 'first-measurement':
			return 'This is the first measurement of this tube: everything after builds on it.';
		case 'narrow-band':
			return 'The band is narrow for this angle finder: two readings tell a good bend from a short one.';
		case 'many-pulls':
			return `This bend has taken ${fact.pulls} pulls: two readings tell a good bend from a short one.`;
		case 'many-wrong':
			return `About ${Math.round(100 * fact.part)} readings in 100 are wrong numbers here: one alone is not enough.`;
	}
}

/** A check's value with its unit. */
export function checkValueWords(value: number, kind: CheckKind, style: Wording): string {
	const measure = measuredIn('check', kind);
	return measure === 'length' ? notNothing(value, style) : shown(value, measure, style);
}
