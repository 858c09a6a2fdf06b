import { View } from '@react-pdf/renderer';
import { tubeAtWork } from '../../session/estimate/tube-at-work.ts';
import { centerLine } from '../../tube/center-line.ts';
import { drawingAxes } from '../../tube/drawing-axes.ts';
import { cornersOn, frames } from '../../tube/frames.ts';
import { isFlat, workshopViews } from '../../tube/principal-views.ts';
import { tape } from '../../words/numbers.ts';
import { RECORD } from '../../words/paper-record.ts';
import { ARC_STEPS, sizesOf, TubeViews } from '../drawing/TubeViews.tsx';
import { Heading } from '../Heading.tsx';
import type { RecordPart } from './record-on-paper.ts';

const DRAWING_HEIGHT = 190;

/** The tube as made over the tube as drawn; both lie on the first straight. Nothing where no bend was made. */
export function AsMade({ of: { state, view }, width }: RecordPart) {
	const { job, bends, status } = view;
	if (bends.every(({ made }) => made === null)) return null;
	const { od } = job.tube;
	const drawn = state.design.shape;
	const at = frames(tubeAtWork(state, state.plan.current).shape);
	const axes = drawingAxes(job.shape, drawn);
	const { front, top, oblique } = workshopViews(axes);
	const sized = [front, top].map((each) => ({
		view: each,
		sizes: sizesOf(at, od, each, (length) => tape(length, job)),
	}));
	const views = isFlat(cornersOn(at), axes) ? sized.slice(0, 1) : [...sized, { view: oblique, sizes: null }];
	return (
		<View wrap={false}>
			<Heading text={status === 'done' ? RECORD.made : RECORD.planned} width={width} />
			<TubeViews
				at={at}
				od={od}
				views={views}
				room={{ width, height: DRAWING_HEIGHT }}
				over={centerLine(frames(drawn), ARC_STEPS)}
			/>
		</View>
	);
}
