import { copedEnds } from '../../tube/cope.ts';
import { copeTemplates } from '../../tube/cope-template.ts';
import { copeDoubts } from '../../words/cope.ts';
import { noCopes, partTitle, sheetWords } from '../../words/full-size.ts';
import type { PartProps } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { inside } from '../page-size.ts';
import { Words } from '../Words.tsx';
import { copeDrawing } from './cope-drawing.ts';
import { FullSizeSheet, roomOn } from './FullSizeSheet.tsx';
import { laidOut } from './sheets.ts';

/** Lines of words over a template. */
const LINES = 7;

/** A template for each coped end, to wrap round the tube. */
export function Copes({ of: { job, shape, foot }, paper }: PartProps) {
	const templates = copeTemplates(job, shape);
	const doubts = copedEnds(job).map((end) => copeDoubts(end, job));
	if (templates.length === 0) {
		return (
			<PaperPage paper={paper} title={partTitle('copes', job.name)} foot={foot}>
				<Words text={noCopes} width={inside(paper).width} size={10} />
			</PaperPage>
		);
	}
	return templates.flatMap((template, i) => {
		const { drawing, words } = copeDrawing(template, job);
		const laid = laidOut(drawing, roomOn(paper, LINES));
		return laid.sheets.map((sheet) => (
			<FullSizeSheet
				key={`${template.end} ${sheet.name}`}
				paper={paper}
				title={partTitle('copes', job.name)}
				foot={foot}
				words={[
					...(laid.sheets.length > 1 ? [`${sheetWords(sheet.name, laid.sheets.length)}.`] : []),
					...words,
					...doubts[i]!,
				].join(' ')}
				lines={LINES}
				laid={laid}
				sheet={sheet}
			/>
		));
	});
}
