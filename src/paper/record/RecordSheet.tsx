import { View } from '@react-pdf/renderer';
import { answered } from '../../session/log/answered.ts';
import { bentAsWords } from '../../words/bent-as.ts';
import { cautionWords } from '../../words/caution.ts';
import { dieListWords } from '../../words/dies.ts';
import { foreign, foreignName } from '../../words/foreign.ts';
import { logWords, openWords, outcomeWords, RECORD, recordHead } from '../../words/paper-record.ts';
import { correctionRows, eventRows } from '../../words/record-log.ts';
import { SIMULATED } from '../../words/session-list.ts';
import { warningWords } from '../../words/warnings.ts';
import { Heading } from '../Heading.tsx';
import { NamedValues } from '../NamedValues.tsx';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf, type Paper } from '../page-size.ts';
import { Sentences } from '../Sentences.tsx';
import type { PaperColumn } from '../Table.tsx';
import { Words } from '../Words.tsx';
import { AsMade } from './AsMade.tsx';
import { BendsMade } from './BendsMade.tsx';
import { ChecksRead } from './ChecksRead.tsx';
import { EveryPull } from './EveryPull.tsx';
import { HeadedTable, TABLE_GAP } from './HeadedTable.tsx';
import type { RecordOnPaper } from './record-on-paper.ts';

/** Sentences that stay on one page together. */
const FEW = 8;
const { columns: C } = RECORD;

/** What was made and how well it is known, for one who was not there. As many pages as it takes. */
export function RecordSheet({ of, paper }: { of: RecordOnPaper; paper: Paper }) {
	const { state, view, clock, problem } = of;
	const { job } = view;
	const { width } = insideOf(paper);
	const part = { of, width };
	const as = bentAsWords(job);
	const warned = (view.warnings ?? []).map((warning) => warningWords(warning, job));
	const cautions = [...warned, cautionWords({ code: 'rule-book' }, job)];
	const corrections = correctionRows(of.corrections, job);
	const events = eventRows(answered(state), job, clock);
	return (
		<PaperPage paper={paper} title={`${foreignName(job.name)}: ${RECORD.title} ${foreignName(view.id)}`} foot={of.foot}>
			<View style={{ rowGap: TABLE_GAP }}>
				<View>
					<Words text={foreignName(job.name)} width={width} size={14} bold />
					{view.simulated && <Words text={SIMULATED} width={width} size={10} bold />}
					<NamedValues values={recordHead(view, state.start, of.imported, clock)} width={width} />
					<Sentences
						lines={[as, dieListWords(job) || null, problem, job.notes === '' ? null : job.notes]}
						width={width}
						size={8}
					/>
				</View>
				<RecordSection head={RECORD.outcome} lines={outcomeWords(state, view)} width={width} bold />
				<BendsMade {...part} />
				<AsMade {...part} />
				<ChecksRead {...part} />
				<RecordSection head={RECORD.open} lines={openWords(state, view)} width={width} />
				<EveryPull {...part} />
				{corrections.length > 0 && (
					<HeadedTable
						head={RECORD.corrections}
						columns={[LINE_COLUMN, WHAT_COLUMN]}
						rows={corrections}
						width={width}
					/>
				)}
				{events.length > 0 && (
					<HeadedTable
						head={RECORD.events}
						columns={[LINE_COLUMN, TIME_COLUMN, WHAT_COLUMN]}
						rows={events}
						width={width}
					/>
				)}
				<RecordSection head={RECORD.cautions} lines={cautions} width={width} />
				<RecordSection head={RECORD.log} lines={logWords(of.log)} width={width} />
			</View>
		</PaperPage>
	);
}

const LINE_COLUMN: PaperColumn = { head: C.line, part: 50, align: 'center' };
const TIME_COLUMN: PaperColumn = { head: C.time, part: 110 };
const WHAT_COLUMN: PaperColumn = { head: C.what, part: 380 };

function RecordSection({
	head,
	lines,
	width,
	bold = false,
}: {
	head: string;
	lines: readonly string[];
	width: number;
	bold?: boolean;
}) {
	return (
		<View wrap={lines.length > FEW}>
			<Heading text={head} width={width} />
			<Sentences
				lines={lines.length === 0 ? [RECORD.none] : lines.map((line) => foreign(line))}
				width={width}
				size={8}
				bold={bold}
			/>
		</View>
	);
}
