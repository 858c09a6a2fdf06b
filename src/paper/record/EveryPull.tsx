import { View } from '@react-pdf/renderer';
import { stages } from '../../session/report/stages.ts';
import { dial } from '../../words/numbers.ts';
import { RECORD } from '../../words/paper-record.ts';
import { pullRemark } from '../../words/record-log.ts';
import { Heading } from '../Heading.tsx';
import { Sentences } from '../Sentences.tsx';
import type { PaperColumn } from '../Table.tsx';
import { HeadedTable } from './HeadedTable.tsx';
import type { RecordPart } from './record-on-paper.ts';

const { columns: C } = RECORD;
const EVERY_PULL_COLUMNS: readonly PaperColumn[] = [
	{ head: C.line, part: 44, align: 'center' },
	{ head: C.bend, part: 36, align: 'center', bold: true },
	{ head: C.setUp, part: 42, align: 'center' },
	{ head: C.snug, part: 44, align: 'right' },
	{ head: C.stop, part: 48, align: 'right' },
	{ head: C.held, part: 48, align: 'right' },
	{ head: C.released, part: 60, align: 'right' },
	{ head: C.measured, part: 80, align: 'right' },
	{ head: C.remark, part: 150 },
];

/** Every pull in the order in which it was made, those taken back among them. */
export function EveryPull({ of: { view }, width }: RecordPart) {
	const pulls = view.bends
		.flatMap(({ pulls: made }, i) => made.map((pull) => ({ ...pull, bend: i + 1 })))
		.sort((a, b) => a.entry - b.entry);
	const known = (value: number | null) => (value === null ? '-' : dial(value));
	const rows = pulls.map((pull) => [
		`${pull.entry}`,
		`${pull.bend}`,
		`${pull.seat}`,
		known(pull.pointer),
		dial(pull.stop),
		dial(pull.loaded),
		known(pull.released),
		stages(pull)[0]!.map(dial).join(', ') || '-',
		pullRemark(pull),
	]);
	if (rows.length > 0)
		return <HeadedTable head={RECORD.pulls} columns={EVERY_PULL_COLUMNS} rows={rows} width={width} />;
	return (
		<View>
			<Heading text={RECORD.pulls} width={width} />
			<Sentences lines={[RECORD.none]} width={width} size={8} />
		</View>
	);
}
