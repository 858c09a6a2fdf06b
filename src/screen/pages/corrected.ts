import type { CorrectedNote, Predicted } from '../../session/protocol.ts';
import type { Job } from '../../tube/job.ts';
import { formatTape } from '../../units/tape.ts';
import { type Line, line, span } from '../line.ts';
import type { Choice } from '../prompt.ts';
import { oldNumbersPossible, type SessionState, type Step } from '../session-state.ts';
import { angle, fine, measureOf, shown } from '../words.ts';
import { answer, type PageView, type Section } from './page.ts';

const CHOICES: readonly Choice<Step>[] = [
	{ label: 'bend the rest by the new numbers', step: { step: 'next' }, advised: true },
	{ label: 'keep the old numbers', step: answer({ do: 'plan', plan: 'old' }) },
];

/** What has changed about the bends left: old and new numbers side by side, in the order of the hands. */
export function correctedPage(state: SessionState, note: CorrectedNote): PageView {
	const anyLeft = note.remaining.length > 0;
	const choice = anyLeft && oldNumbersPossible(state.ask);
	return {
		title: anyLeft ? reason(note) : 'The tube as made',
		prompt: {
			label: choice ? 'Number of your choice' : '',
			...(choice ? { choices: CHOICES } : {}),
			plus: { label: anyLeft ? 'new numbers' : 'go on', step: { step: 'next' } },
			slash: { label: 'take back', step: { step: 'page', page: { page: 'undo' } } },
			empty: choice
				? 'Press + for the new numbers, or write the number of a choice and press Enter.'
				: 'Press + to go on.',
		},
		body: () => [...table(note, state.job), { rank: 1, lines: predictions(note, state.job) }],
	};
}

function reason({ after }: CorrectedNote): string {
	if (after === 'growth') return 'Corrected for the radius as it comes out';
	return 'bend' in after ? `Corrected after bend ${after.bend}` : `Corrected after entry ${after.entry}`;
}

const HEAD = ['', 'mark old', 'new', 'turn old', 'new', 'bend old', 'new'];
/** Together as wide as the narrowest screen. */
const WIDTHS = [7, 9, 10, 9, 8, 9, 8];

function table({ remaining }: CorrectedNote, job: Job): Section[] {
	if (remaining.length === 0) return [];
	const mark = (length: number) => formatTape(length, job.tooling.tape, job.units);
	const rows = remaining.map(({ bend, fromStart, angle: target, rotation, was }): Line => {
		const pairs: [string, string][] = [
			[mark(was.fromStart), mark(fromStart)],
			[angle(was.rotation), angle(rotation)],
			[angle(was.angle), angle(target)],
		];
		const cells = pairs.flatMap(([before, now], at) => [
			span(before.padStart(WIDTHS[2 * at + 1]!)),
			span(now.padStart(WIDTHS[2 * at + 2]!), before === now ? 'quiet' : 'strong'),
		]);
		return [span(`bend ${bend}`.padEnd(WIDTHS[0]!)), ...cells];
	});
	return [{ rank: 0, lines: [line(cells(HEAD), 'quiet'), ...rows] }];
}

function cells(texts: readonly string[]): string {
	return texts.map((text, at) => (at === 0 ? text.padEnd(WIDTHS[0]!) : text.padStart(WIDTHS[at]!))).join('');
}

/** What the tube will be by either plan; once no bend is left there is nothing to compare. */
function predictions({ remaining, predicted, without }: CorrectedNote, job: Job): Line[] {
	const compared = remaining.length > 0;
	const row = (label: string, of: (which: Predicted) => string): Line => [
		span(label.padEnd(30)),
		...(compared ? [span(of(without).padStart(15))] : []),
		span(of(predicted).padStart(15), 'strong'),
	];
	const head = `${'The finished tube'.padEnd(30)}${'as drawn'.padStart(15)}${'corrected'.padStart(15)}`;
	return [
		...(compared ? [line(head, 'quiet')] : []),
		row('far end off its place by', (which) => fine(which.endOffset, job)),
		row('far end off its direction by', (which) => angle(which.endAngle)),
		...predicted.checks.map(({ name }) =>
			row(`check ${name}`.slice(0, 29), (which) => {
				const value = which.checks.find((check) => check.name === name)?.value;
				return value === undefined ? '-' : shown(value, measureOf('check', job, name), job);
			}),
		),
	];
}
