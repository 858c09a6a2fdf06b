import type { Batch, BendOver } from '../../../session/batch/batch.ts';
import type { DoneNote } from '../../../session/protocol/notes.ts';
import { pullsWords, signed, timeWords, walkRule, walkWords } from '../../../words/batch.ts';
import { KEY_SAYS, ONLY_BACK } from '../../../words/screen/usual.ts';
import { BATCH, heatPieces, overRow } from '../../../words/session/batch.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import type { SessionState } from '../session-state.ts';
import type { PageView, Section } from './page.ts';

/** What the batch has come to: each bend over its pieces, and what a piece took. */
export function batchPage({ batch }: SessionState, note: DoneNote): PageView {
	return {
		title: BATCH.title,
		prompt: {
			label: '',
			back: { label: KEY_SAYS.back, step: { step: 'page', page: { page: 'done', note } } },
			empty: ONLY_BACK,
		},
		body: ({ columns }) => (batch === null ? [] : batchSections(batch, columns)),
	};
}

function batchSections(batch: Batch, columns: number): Section[] {
	const { pieces, made, bends } = batch;
	const walking = bends.flatMap(({ bend, walks }) => (walks === null ? [] : [{ bend, walks }]));
	return [
		{ rank: 0, lines: wrapped(BATCH.made(pieces), columns, 'strong') },
		{ rank: 0, lines: made.length === 0 ? [] : wrapped(`${pullsWords(batch)}, ${timeWords(batch)}.`, columns) },
		{
			rank: 0,
			lines: walking.flatMap(({ bend, walks }) => wrapped(`! ${walkWords(bend, walks)}`, columns, 'alert', 2)),
		},
		{ rank: 1, lines: batchTable(bends, columns) },
		{
			rank: 2,
			lines: walking.length === 0 ? [] : wrapped(walkRule(walking.map(({ walks }) => walks)), columns, 'quiet'),
		},
		{ rank: 3, lines: heats(batch, columns) },
	];
}

const BATCH_WIDTHS = { bend: 9, drawn: 7, mean: 12, range: 16, each: 6 };

/** Each bend's error against the drawing: the mean, from the least to the most, and as many of the last pieces as have room. */
function batchTable(bends: readonly BendOver[], columns: number): Line[] {
	if (bends.every(({ errors }) => errors.length === 0)) return [];
	const { bend, drawn, mean, range, each } = BATCH_WIDTHS;
	const room = Math.max(0, Math.floor((columns - bend - drawn - mean - range - 2) / each));
	const cells = ([name, by, middle, between]: readonly [string, string, string, string]) =>
		[name.padEnd(bend), by.padStart(drawn), middle.padStart(mean), between.padStart(range)] as const;
	return [
		line(`${cells(BATCH.heads).join('')}  ${BATCH.last(room)}`.trimEnd(), 'quiet'),
		...bends.map((over): Line => {
			const [name, by, middle, between] = cells(overRow(over));
			const last = room === 0 ? [] : over.errors.slice(-room).map((error) => signed(error).padStart(each - 1));
			const tone = over.walks === null ? 'plain' : 'alert';
			return [span(name), span(by), span(middle, tone), span(between), span(`  ${last.join(' ')}`.trimEnd())];
		}),
	];
}

/** Which pieces are of which heat, where more than one was told. */
function heats({ made }: Batch, columns: number): Line[] {
	const all = new Set(made.map(({ heat }) => heat));
	if (all.size < 2) return [];
	const told = [...all].map((heat) => {
		const own = made.flatMap((each, i) => (each.heat === heat ? [each.piece ?? i + 1] : []));
		return heatPieces(heat, own);
	});
	return wrapped(`${told.join('; ')}.`, columns, 'plain', 2);
}
