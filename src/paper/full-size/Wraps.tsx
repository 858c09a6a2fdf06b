import { isTurned, wrapStrips } from '../../tube/wraps.ts';
import { ONE_PLANE, partTitle, WRAPPING } from '../../words/full-size.ts';
import type { PartProps } from '../job-on-paper.ts';
import { useTypeface } from '../Words.tsx';
import { roomUnder } from './FullSizeSheet.tsx';
import { FullSizeSheets } from './FullSizeSheets.tsx';
import { STRIP_PITCH, wrapDrawing } from './wrap-drawing.ts';

/** A strip for each bend, to wrap round the tube at its mark. */
export function Wraps({ of: { job, shape, foot }, paper }: PartProps) {
	const words = isTurned(job, shape) ? WRAPPING : `${ONE_PLANE} ${WRAPPING}`;
	const room = roomUnder(words, paper, useTypeface());
	const strips = wrapStrips(job, shape);
	const most = Math.floor(room.height / STRIP_PITCH);
	const pages = Array.from({ length: Math.ceil(strips.length / most) }, (_, i) =>
		strips.slice(i * most, (i + 1) * most),
	);
	return pages.map((some) => (
		<FullSizeSheets
			key={some[0]!.bend}
			paper={paper}
			title={partTitle('wraps', job.name)}
			foot={foot}
			words={words}
			drawing={wrapDrawing(some, job)}
		/>
	));
}
