import { Document, renderToBuffer } from '@react-pdf/renderer';
import type { ReactElement } from 'react';
import { CUT_LIST } from '../words/cut-list.ts';
import { type CutListProps, CutSheet } from './cut/CutSheet.tsx';
import type { JobOnPaper } from './job-on-paper.ts';
import type { Paper } from './page-size.ts';
import { PARTS, type PartName } from './parts.ts';
import { RecordSheet } from './record/RecordSheet.tsx';
import type { RecordOnPaper } from './record/record-on-paper.ts';
import { openTypeface } from './typeface.ts';
import { TypefaceOf } from './Words.tsx';

/** The parts asked for, of one job, as the bytes of one PDF. */
export function printJob(parts: readonly PartName[], of: JobOnPaper, paper: Paper): Promise<Uint8Array> {
	const pages = parts.map((name) => {
		const Part = PARTS[name];
		return <Part key={name} of={of} paper={paper} alone={parts.length === 1} />;
	});
	return printed(pages, of.job.name);
}

/** The cut lists as the bytes of one PDF. */
export function printCutList(of: CutListProps): Promise<Uint8Array> {
	return printed([<CutSheet key="cut" {...of} />], CUT_LIST);
}

/** The record of a session, as the bytes of one PDF. */
export function printRecord(of: RecordOnPaper, paper: Paper): Promise<Uint8Array> {
	return printed([<RecordSheet key="record" of={of} paper={paper} />], of.view.job.name);
}

/** Pages as the bytes of a PDF. `title`: what a reader shows above them. */
export async function printed(pages: readonly ReactElement[], title: string): Promise<Uint8Array> {
	const type = await openTypeface();
	return renderToBuffer(
		<TypefaceOf.Provider value={type}>
			<Document title={type.legible(title)} creator="pullbook" producer="pullbook">
				{pages}
			</Document>
		</TypefaceOf.Provider>,
	);
}
