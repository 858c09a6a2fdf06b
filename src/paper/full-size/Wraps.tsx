import { isTurned, wrapStrips } from '../../tube/wraps.ts';
import { ONE_PLANE, partTitle, sheetWords, WRAPPING } from '../../words/full-size.ts';
import type { PartProps } from '../job-on-paper.ts';
import { FullSizeSheet, roomOn } from './FullSizeSheet.tsx';
import { laidOut } from './sheets.ts';
import { STRIP_PITCH, wrapDrawing } from './wrap-drawing.ts';

/** Lines of words over the strips. */
const LINES = 4;

/** A strip for each bend, to wrap round the tube at its mark. */
export function Wraps({ of: { job, shape, foot }, paper }: PartProps) {
	const room = roomOn(paper, LINES);
	const strips = wrapStrips(job, shape);
	const most = Math.floor(room.height / STRIP_PITCH);
	const pages = Array.from({ length: Math.ceil(strips.length / most) }, (_, i) =>
		strips.slice(i * most, (i + 1) * most),
	);
	return pages.flatMap((some) => {
		const laid = laidOut(wrapDrawing(some, job), room);
		return laid.sheets.map((sheet) => (
			<FullSizeSheet
				key={`${some[0]!.bend} ${sheet.name}`}
				paper={paper}
				title={partTitle('wraps', job.name)}
				foot={foot}
				words={[
					...(laid.sheets.length > 1 ? [`${sheetWords(sheet.name, laid.sheets.length)}.`] : []),
					...(isTurned(job, shape) ? [] : [ONE_PLANE]),
					WRAPPING,
				].join(' ')}
				lines={LINES}
				laid={laid}
				sheet={sheet}
			/>
		));
	});
}
