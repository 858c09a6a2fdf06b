import { View } from '@react-pdf/renderer';
import { drawingAxes } from '../../tube/drawing-axes.ts';
import { cornersOn, frames } from '../../tube/frames.ts';
import { isFlat, workshopViews } from '../../tube/principal-views.ts';
import { tape } from '../../words/numbers.ts';
import { SHEET } from '../../words/sheet.ts';
import { sizesOf, TubeViews } from '../drawing/TubeViews.tsx';
import { Heading } from '../Heading.tsx';
import type { SheetPart } from './SheetHead.tsx';

/** The tube as it should come out, from the front, from above and from aside. `room`: points that the drawing may take. */
export function FinishedTube({ of: { job, shape }, width, room }: SheetPart & { room: number }) {
	const at = frames(shape);
	const { od } = job.tube;
	const axes = drawingAxes(job.shape, shape);
	const { front, top, oblique } = workshopViews(axes);
	const sized = [front, top].map((view) => ({ view, sizes: sizesOf(at, od, view, (length) => tape(length, job)) }));
	const flat = isFlat(cornersOn(at), axes);
	const views = flat ? sized.slice(0, 1) : [...sized, { view: oblique, sizes: null }];
	return (
		<View wrap={false}>
			<Heading text={flat ? `${SHEET.shape}. ${SHEET.flat}` : SHEET.shape} width={width} />
			<TubeViews at={at} od={od} views={views} room={{ width, height: room }} />
		</View>
	);
}
