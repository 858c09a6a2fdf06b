import { View } from '@react-pdf/renderer';
import { at } from '../../maths/list.ts';
import { formatAngle } from '../../units/format.ts';
import { about, angle, fine } from '../../words/numbers.ts';
import { aimedAt, bendVerdict, lastStraightWords, RECORD, rotationMade } from '../../words/paper-record.ts';
import { Heading } from '../Heading.tsx';
import { Sentences } from '../Sentences.tsx';
import { type PaperColumn, Table } from '../Table.tsx';
import type { RecordPart } from './record-on-paper.ts';

const { columns: C } = RECORD;
const BEND_COLUMNS: readonly PaperColumn[] = [
	{ head: C.bend, part: 30, align: 'center', bold: true },
	{ head: C.drawn, part: 42, align: 'right' },
	{ head: C.aimed, part: 42, align: 'right' },
	{ head: C.made, part: 42, align: 'right', bold: true },
	{ head: C.giveOrTake, part: 34, align: 'right' },
	{ head: C.verdict, part: 93 },
	{ head: C.mark, part: 66, align: 'right' },
	{ head: C.markMade, part: 66, align: 'right' },
	{ head: C.rotation, part: 42, align: 'right' },
	{ head: C.rotationMade, part: 42, align: 'right' },
	{ head: C.straight, part: 58, align: 'right' },
	{ head: C.straightMade, part: 58, align: 'right' },
];

/** Each bend as it was drawn beside what was made of it. */
export function BendsMade({ of: { state, view }, width }: RecordPart) {
	const { job, asBuilt } = view;
	const { shape, marks } = state.design;
	const rows = view.bends.map((bend, i) => {
		const { made, design } = bend;
		const { mark, rotation } = at(state.bends, i);
		return [
			`${i + 1}`,
			formatAngle(design, 2),
			angle(aimedAt(view, i + 1)),
			made === null ? '-' : angle(made.angle),
			made === null ? '-' : about(made.sd),
			bendVerdict(bend, job),
			fine(at(marks, i), job),
			mark === null ? '-' : fine(mark, job),
			formatAngle(at(shape.bends, i).rotation, 2),
			rotation === null ? '-' : rotationMade(rotation, at(shape.bends, i).rotation),
			fine(at(shape.straights, i), job),
			made === null ? '-' : fine(at(asBuilt.straights, i), job),
		];
	});
	const last = view.status === 'done' ? [lastStraightWords(view, at(shape.straights, view.bends.length))] : [];
	return (
		<View>
			<Heading text={RECORD.bends} width={width} />
			<Table columns={BEND_COLUMNS} rows={rows} width={width} size={7.5} />
			<Sentences lines={[...last, RECORD.asTold]} width={width} size={7} />
		</View>
	);
}
