import { copedEnds } from '../../tube/cope.ts';
import { copeTemplates } from '../../tube/cope-template.ts';
import { copeDoubts } from '../../words/cope.ts';
import { noCopes, partTitle } from '../../words/full-size.ts';
import type { PartProps } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { insideOf } from '../page-size.ts';
import { Words } from '../Words.tsx';
import { copeDrawing } from './cope-drawing.ts';
import { FullSizeSheets } from './FullSizeSheets.tsx';

/** A template for each coped end, to wrap round the tube. */
export function Copes({ of: { job, shape, foot }, paper }: PartProps) {
	const templates = copeTemplates(job, shape);
	const doubts = copedEnds(job).map((end) => copeDoubts(end, job));
	if (templates.length === 0) {
		return (
			<PaperPage paper={paper} title={partTitle('copes', job.name)} foot={foot}>
				<Words text={noCopes} width={insideOf(paper).width} size={10} />
			</PaperPage>
		);
	}
	return templates.map((template, i) => {
		const { drawing, words } = copeDrawing(template, job);
		return (
			<FullSizeSheets
				key={template.end}
				paper={paper}
				title={partTitle('copes', job.name)}
				foot={foot}
				words={[...words, ...doubts[i]!].join(' ')}
				drawing={drawing}
			/>
		);
	});
}
