import type { CorrectedNote } from '../../../session/protocol/notes.ts';
import { cutLength, marks } from '../../../tube/marks.ts';
import { trimmed } from '../../../units/format.ts';
import { bendName } from '../../../words/bend-name.ts';
import { tapeValue } from '../../../words/lengths.ts';
import { angle } from '../../../words/numbers.ts';
import { CHOICE, KEY_SAYS } from '../../../words/screen/usual.ts';
import { CORRECTED, GROUPS, rotationsWords, rotationWords } from '../../../words/session/corrected.ts';
import type { Choice } from '../../shell/prompt.ts';
import { type Line, line, span, wrapped } from '../../text/line.ts';
import { oldNumbersPossible, type SessionState, type SessionStep } from '../session-state.ts';
import { finishedTube } from './finished-tube.ts';
import { answer, FULL_WIDTH, type PageView, SLASH, STAR } from './page.ts';

const CHOICES: readonly Choice<SessionStep>[] = [
	{ label: CORRECTED.choices.new, step: { step: 'next' }, advised: true },
	{ label: CORRECTED.choices.old, step: answer({ do: 'plan', plan: 'old' }) },
];

/** What has changed about the bends left: old and new numbers side by side, in the order of the hands. */
export function correctedPage(state: SessionState, note: CorrectedNote): PageView {
	const anyLeft = note.remaining.length > 0;
	const choice = anyLeft && oldNumbersPossible(state.ask);
	return {
		title: CORRECTED.title(note),
		prompt: {
			label: choice ? CHOICE : '',
			...(choice ? { choices: CHOICES } : {}),
			plus: { label: anyLeft ? CORRECTED.plus : KEY_SAYS.goOn, step: { step: 'next' } },
			slash: SLASH,
			star: STAR,
			empty: CORRECTED.empty(choice),
		},
		body: (room) => {
			const each = correctedTable(note, state, room.columns, false);
			// A line is kept for what becomes of the tube.
			const numbers = each.length < room.free ? each : correctedTable(note, state, room.columns, true);
			return [
				{ rank: 0, wide: true, lines: numbers },
				...finishedTube(state, note, room.columns, room.free - numbers.length),
			];
		},
	};
}

/** Drawing, before the correction, now: of one bend, in the order of the hands. */
interface Compared {
	bend: number;
	mark: Triple;
	rotation: Triple;
	angle: Triple;
}
type Triple = readonly [drawing: number, before: number, now: number];

function comparedBends({ remaining }: CorrectedNote, { job, drawn: shape }: SessionState): Compared[] {
	const drawn = marks(job, shape, cutLength(job, shape));
	return remaining.map(({ bend, fromStart, angle, rotation, was }) => {
		const design = shape.bends[bend - 1]!;
		return {
			bend,
			mark: [drawn[bend - 1]!.fromStart, was.fromStart, fromStart],
			rotation: [design.rotation, was.rotation, rotation],
			angle: [design.angle, was.angle, angle],
		};
	});
}

const LABEL = 8;
const MARK_WIDTH = 10;
const ANGLE_WIDTH = 7;

/** `together`: the turns of a narrow window in one text, as short as they can be told. */
function correctedTable(note: CorrectedNote, state: SessionState, columns: number, together: boolean): Line[] {
	if (note.remaining.length === 0) return [];
	const { job } = state;
	const all = comparedBends(note, state);
	const wide = columns >= FULL_WIDTH;
	const groups: [name: string, width: number, of: (bend: Compared) => string[]][] = [
		[GROUPS.mark(job), MARK_WIDTH, ({ mark }) => mark.map((length) => tapeValue(length, job))],
		...(wide
			? [[GROUPS.rotation, ANGLE_WIDTH, ({ rotation }: Compared) => rotation.map(angleCell)] as (typeof groups)[number]]
			: []),
		[GROUPS.bend, ANGLE_WIDTH, ({ angle }) => angle.map(angleCell)],
	];
	const above = groups.map(([name, width]) => ` ${name}`.padEnd(3 * width)).join('');
	const heads = groups.map(([, width]) => GROUPS.heads.map((text) => text.padStart(width)).join(''));
	const rows = all.map((bend): Line => {
		const cells = groups.flatMap(([, width, of]) => {
			const [drawing = '', before = '', now = ''] = of(bend);
			const changed = now !== before;
			return [
				span(drawing.padStart(width) + before.padStart(width)),
				span(now.padStart(width), changed ? 'strong' : 'plain'),
			];
		});
		return [span(bendName(bend.bend).padEnd(LABEL)), ...cells];
	});
	return [
		line(' '.repeat(LABEL) + above, 'quiet'),
		line(' '.repeat(LABEL) + heads.join(''), 'quiet'),
		...rows,
		...(wide ? [] : turnedLines(all, columns, together)),
	];
}

function angleCell(value: number): string {
	return trimmed(value, 1);
}

/** The turns that change: that one is not the drawing's was told when it changed. */
function turnedLines(all: readonly Compared[], columns: number, together: boolean): Line[] {
	const turned = all.filter(({ rotation: [, before, now] }) => angle(before) !== angle(now));
	if (together && turned.length > 0) return wrapped(rotationsWords(turned), columns, 'plain', 2);
	return turned.flatMap(({ bend, rotation }) => wrapped(rotationWords(bend, rotation), columns, 'plain', 2));
}
