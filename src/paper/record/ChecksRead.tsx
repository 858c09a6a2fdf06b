import { View } from '@react-pdf/renderer';
import { checkFits } from '../../session/advice/bend-alone.ts';
import { uncutTrim } from '../../session/reading/check-reading.ts';
import { checkWords } from '../../words/checks.ts';
import { checkValueWords } from '../../words/doubt.ts';
import { foreignName } from '../../words/foreign.ts';
import { checkVerdict, RECORD } from '../../words/paper-record.ts';
import { Heading } from '../Heading.tsx';
import { type PaperColumn, Table } from '../Table.tsx';
import type { RecordPart } from './record-on-paper.ts';

const { columns: C } = RECORD;
const CHECK_COLUMNS: readonly PaperColumn[] = [
	{ head: C.check, part: 270 },
	{ head: C.drawn, part: 66, align: 'right' },
	{ head: C.within, part: 54, align: 'right' },
	{ head: C.read, part: 66, align: 'right', bold: true },
	{ head: C.inside, part: 90 },
];

/** What was read on the tube itself. */
export function ChecksRead({ of: { state, view }, width }: RecordPart) {
	const { job } = view;
	if (job.checks.length === 0) return null;
	const rows = job.checks.map((check) => {
		const read = view.checks.find(({ name }) => name === check.name);
		const told = (value: number) => checkValueWords(value, check.kind, job);
		const reading = read?.reading ?? null;
		const fits = reading === null ? null : checkFits(state, check.name, reading);
		return [
			`${foreignName(check.name)}: ${checkWords(check)}`,
			read === undefined ? '-' : told(read.design),
			`±${told(check.tolerance)}`,
			reading === null ? RECORD.notRead : told(reading),
			checkVerdict(fits, uncutTrim(state, check), job),
		];
	});
	return (
		<View>
			<Heading text={RECORD.checks} width={width} />
			<Table columns={CHECK_COLUMNS} rows={rows} width={width} size={7.5} />
		</View>
	);
}
