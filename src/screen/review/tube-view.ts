import { tubeAtWork } from '../../session/estimate/tube-at-work.ts';
import { predicted } from '../../session/plan/correction.ts';
import type { Shape } from '../../tube/shape.ts';
import { TUBE } from '../../words/review/pages.ts';
import { drawTube } from '../drawing/tube-drawing.ts';
import type { HomeView } from '../home/home-view.ts';
import { line, wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { TURN, turnedView } from './turned-view.ts';
import { HELP_KEY, toReview, usual } from './usual.ts';

/** The tube as drawn over the tube as made, turned with the arrow keys. */
export function tubeView(opened: Opened, at: Extract<ReviewPage, { review: 'tube' }>): HomeView {
	const { state } = opened.story;
	const { job } = state.start;
	const drawn = state.design.shape;
	const { shape } = tubeAtWork(state, state.plan.current);
	const shown = at.enlarged ? enlarged(shape, drawn) : shape;
	const made = state.bends.filter((bend) => bend.made !== null).length;
	const { endOffset, shape: farthest } = predicted(state, state.plan.current);
	const turn = (across: number, over: number) => toReview({ ...at, across: at.across + across, over: at.over + over });
	const [left, right, up, down] = [turn(-1, 0), turn(1, 0), turn(0, 1), turn(0, -1)];
	return {
		...usual(at, opened),
		title: TUBE.title,
		keys: [
			['4 6 2 8', TUBE.keys.turn(TURN)],
			['5', TUBE.keys.reset],
			['0', TUBE.errors(at.enlarged ? 1 : LARGER)],
			HELP_KEY,
		],
		moves: {
			...{ left, right, up, down, '4': left, '6': right, '8': up, '2': down },
			'5': toReview({ ...at, across: 0, over: 0 }),
			'0': toReview({ ...at, enlarged: !at.enlarged }),
		},
		body: ({ columns }) => [
			{
				rank: 0,
				lines: wrapped(TUBE.off(endOffset, farthest, job), columns),
			},
			{ rank: 1, lines: wrapped(TUBE.read(at.enlarged ? LARGER : 1), columns, at.enlarged ? 'alert' : 'quiet') },
		],
		picture:
			({ ascii }) =>
			(columns, rows) => {
				const view = turnedView(drawn, at.across, at.over);
				return drawTube(shown, made + 1, columns, rows, ascii, drawn, [view]).rows.map((row) => line(row));
			},
	};
}

/** How many times as large errors are shown where they are enlarged. */
const LARGER = 10;

/** The shape with all that it differs by from another several times as large. */
function enlarged(shape: Shape, drawn: Shape): Shape {
	const more = (made: number, wanted = made) => wanted + LARGER * (made - wanted);
	return {
		straights: shape.straights.map((length, i) => Math.max(0, more(length, drawn.straights[i]))),
		bends: shape.bends.map((bend, i) => ({
			...bend,
			angle: Math.max(0, more(bend.angle, drawn.bends[i]?.angle)),
			rotation: more(bend.rotation, drawn.bends[i]?.rotation),
		})),
	};
}
