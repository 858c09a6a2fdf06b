import type { Batch, BendOver } from '../../../session/batch/batch.ts';
import type { DoneNote } from '../../../session/protocol/notes.ts';
import {
	madeWords,
	meanErrorWords,
	pullsWords,
	scrappedWords,
	signed,
	timeWords,
	walkRule,
	walkWords,
} from '../../../words/batch.ts';
import { foreignName } from '../../../words/foreign.ts';
import { angle } from '../../../words/numbers.ts';
import { ONLY_BACK } from '../../../words/screen/usual.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import type { PageView, Section } from './page.ts';

/** What the batch has come to: each bend over its pieces, and what a piece took. */
export function batchPage({ batch }: SessionState, note: DoneNote): PageView {
	return {
		title: 'The batch',
		prompt: {
			label: '',
			back: { label: 'back', step: { step: 'page', page: { page: 'done', note } } },
			empty: ONLY_BACK,
		},
		body: ({ columns }) => (batch === null ? [] : sections(batch, columns)),
	};
}

function sections(batch: Batch, columns: number): Section[] {
	const { pieces, made, bends } = batch;
	const walking = bends.flatMap(({ bend, walks }) => (walks === null ? [] : [{ bend, walks }]));
	return [
		{ rank: 0, lines: wrapped(`${madeWords(pieces)}${scrappedWords(pieces)}.`, columns, 'strong') },
		{ rank: 0, lines: made.length === 0 ? [] : wrapped(`${pullsWords(batch)}, ${timeWords(batch)}.`, columns) },
		{
			rank: 0,
			lines: walking.flatMap(({ bend, walks }) => wrapped(`! ${walkWords(bend, walks)}`, columns, 'alert', 2)),
		},
		{ rank: 1, lines: table(bends, columns) },
		{
			rank: 2,
			lines: walking.length === 0 ? [] : wrapped(walkRule(walking.map(({ walks }) => walks)), columns, 'quiet'),
		},
		{ rank: 3, lines: heats(batch, columns) },
	];
}

const WIDTHS = { bend: 9, drawn: 7, mean: 12, range: 16, each: 6 };

/** Each bend's error against the drawing: the mean, from the least to the most, and as many of the last pieces as have room. */
function table(bends: readonly BendOver[], columns: number): Line[] {
	if (bends.every(({ errors }) => errors.length === 0)) return [];
	const { bend, drawn, mean, range, each } = WIDTHS;
	const room = Math.max(0, Math.floor((columns - bend - drawn - mean - range - 2) / each));
	const head = ['bend'.padEnd(bend), 'drawn'.padStart(drawn), 'mean'.padStart(mean), 'from, to'.padStart(range)];
	return [
		line(`${head.join('')}  ${room === 0 ? '' : room < 4 ? 'the last' : 'the last pieces'}`.trimEnd(), 'quiet'),
		...bends.map((over): Line => {
			const { errors } = over;
			const known = errors.length > 0;
			const least = known ? `${signed(Math.min(...errors))}, ${signed(Math.max(...errors))}` : '';
			return [
				span(`bend ${over.bend}`.padEnd(bend)),
				span(angle(over.drawn).padStart(drawn)),
				span((known ? meanErrorWords(over.mean) : 'not made').padStart(mean), over.walks === null ? 'plain' : 'alert'),
				span(least.padStart(range)),
				span(
					`  ${
						room === 0
							? ''
							: errors
									.slice(-room)
									.map((error) => signed(error).padStart(each - 1))
									.join(' ')
					}`.trimEnd(),
				),
			];
		}),
	];
}

/** Which pieces are of which heat, where more than one was told. */
function heats({ made }: Batch, columns: number): Line[] {
	const all = new Set(made.map(({ heat }) => heat));
	if (all.size < 2) return [];
	const told = [...all].map((heat) => {
		const own = made.flatMap((each, i) => (each.heat === heat ? [each.piece ?? i + 1] : []));
		return `${heat === null ? 'heat not told' : `heat ${foreignName(heat)}`}: ${own.length === 1 ? 'piece' : 'pieces'} ${own.join(', ')}`;
	});
	return wrapped(`${told.join('; ')}.`, columns, 'plain', 2);
}
