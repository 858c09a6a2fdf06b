import type { CheckAsk, ConfirmAsk, MeasureAsk } from '../../session/protocol.ts';
import type { Job } from '../../tube/job.ts';
import { trimmed } from '../../units/format.ts';
import { formatTape } from '../../units/tape.ts';
import { UnitsError } from '../../units/units-error.ts';
import { type Line, line, span, wrapped } from '../line.ts';
import { bigNumbers } from '../parts/big-numbers.ts';
import type { Prompt } from '../prompt.ts';
import type { SessionState, Step } from '../session-state.ts';
import { checkMeasure, checkWords, measureOf, READINGS, shown, spreadOf } from '../words.ts';
import { answer, BACK, numberField, type PageView, SLASH, STAR, written } from './page.ts';

/** The bend is measured with the angle finder. */
export function measurePage(state: SessionState, ask: MeasureAsk): PageView {
	const twice = ask.readings === 2 ? 'Two readings wanted: take the finder off, set it again for the second.' : '';
	return {
		title: 'Measure the bend',
		prompt: {
			label: 'Angle finder on the bend, tube released',
			...numberField('angle', state.job, (angle) => answer({ do: 'angles', angles: [angle] })),
			slash: SLASH,
			star: STAR,
			empty: 'Write what the angle finder reads and press Enter; * has skip.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: expected(
					'expected',
					trimmed(ask.expect.angle, 1),
					`± ${trimmed(Math.max(ask.expect.sd, 0.1), 1)} degrees`,
					room,
				),
			},
			{ rank: 1, lines: wrapped(twice, room.columns, 'alert') },
			{
				rank: 2,
				lines: wrapped(
					'The angle that the tube was bent through: a straight tube is 0. Read it on both legs, clear of the bend.',
					room.columns,
					'quiet',
				),
			},
		],
	};
}

/** A reading far from what was expected: does it stand? */
export function confirmPage(state: SessionState, ask: ConfirmAsk): PageView {
	const measure = measureOf(ask.of, state.job, ask.name);
	const expect = `${shown(ask.expect.value, measure, state.job)} ± ${spreadOf(ask.expect.sd, measure, state.job)}`;
	const of = ask.of === 'check' ? `check "${ask.name ?? ''}"` : READINGS[ask.of];
	return {
		title: 'Is that right?',
		prompt: {
			label: `Read it again: ${of}`,
			...numberField(measure, state.job, (reading) => answer({ do: 'reading', reading })),
			plus: { label: 'it stands', step: answer({ do: 'keep' }) },
			slash: SLASH,
			star: STAR,
			empty: 'Read it again: press + if it stands, or write the new reading and press Enter.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: [
					[span('You gave    '), span(shown(ask.reading, measure, state.job), 'alert')],
					[span('Expected    '), span(expect, 'strong')],
				],
			},
			{ rank: 0, lines: wrapped(ask.why, room.columns) },
			{
				rank: 1,
				lines: wrapped('The reading is saved. It counts once it has been read again.', room.columns, 'quiet'),
			},
		],
	};
}

/** A check on the tube itself. */
export function checkPage(state: SessionState, ask: CheckAsk): PageView {
	const { job } = state;
	const measure = checkMeasure(ask.kind);
	const found = job.checks.find(({ name }) => name === ask.name);
	const big =
		measure === 'length' && job.units === 'in'
			? formatTape(ask.expect.value, 1 / 32, 'in')
			: trimmed(ask.expect.value, measure === 'ratio' ? 3 : 1);
	const unit = measure === 'length' ? ` ${job.units}` : measure === 'angle' ? ' degrees' : '';
	return {
		title: `Check: ${ask.name}`,
		prompt: checkPrompt(state, ask),
		body: (room) => [
			{
				rank: 0,
				lines: expected(
					'expected',
					big,
					`± ${spreadOf(ask.expect.sd, measure, job)}${unit === ' degrees' ? unit : ''}`,
					room,
				),
			},
			{ rank: 0, lines: [design(shown(ask.design, measure, job), shown(ask.tolerance, measure, job))] },
			{ rank: 1, lines: found === undefined ? [] : wrapped(`${checkWords(found)}.`, room.columns) },
			{ rank: 1, lines: wrapped(ask.includes ?? '', room.columns, 'alert') },
		],
	};
}

function checkPrompt(state: SessionState, ask: CheckAsk): Prompt<Step> {
	const rest = { slash: SLASH, star: STAR };
	if (ask.kind !== 'ovality') {
		const field = numberField(checkMeasure(ask.kind), state.job, (reading) => answer({ do: 'reading', reading }));
		return {
			label: 'What it measures',
			...field,
			...rest,
			empty: 'Write what it measures and press Enter; * has skip.',
		};
	}
	return {
		label: 'Greatest outside diameter',
		...numberField('length', state.job, (greatest) => ({ step: 'page', page: { page: 'least', greatest } })),
		...rest,
		empty: 'Write the greatest diameter and press Enter, the least follows; * has skip.',
	};
}

/** The second half of an ovality check: the least diameter, from which the ratio follows. */
export function leastPage(state: SessionState, greatest: number): PageView {
	const { job } = state;
	const field = numberField('length', job, (least) => answer({ do: 'reading', reading: ratio(least, greatest, job) }));
	return {
		title: 'Least diameter',
		prompt: {
			label: 'Least outside diameter',
			...field,
			back: BACK,
			empty: 'Write the least diameter and press Enter.',
		},
		body: () => [
			{ rank: 0, lines: [line(`Greatest outside diameter ${written(greatest, 'length', job)} (not saved yet)`)] },
		],
	};
}

function ratio(least: number, greatest: number, job: Job): number {
	if (least > 0 && least <= greatest) return least / greatest;
	throw new UnitsError(
		String(least),
		`the least diameter is above 0 and at most the greatest, ${written(greatest, 'length', job)}`,
	);
}

function design(value: string, tolerance: string): Line {
	return line(`drawing ${value} ± ${tolerance}`);
}

function expected(label: string, value: string, below: string, room: { columns: number; ink: string }): Line[] {
	return bigNumbers([{ label: label.toUpperCase(), value, below, chief: true }], room.columns, room.ink);
}
