import { type DieBand, landedPlot, meanPulls, scatterPlot, springbackPlot } from '../../review/plots.ts';
import { ERRORS, LANDED, PLOT, PULLS, SCATTER, SPRINGBACK } from '../../words/review/plots.ts';
import { type Plot, plotLines } from '../drawing/plot.ts';
import type { HomeView } from '../home/home-view.ts';
import { wrapped } from '../text/line.ts';
import { PLOTS, type PlotName, type ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { HELP_KEY, toReview, usual } from './usual.ts';

/** A plot with what it is called and how it is read. */
interface ToldPlot {
	title: string;
	says: string;
	/** Null where nothing that it would show was read. */
	plot: Plot | null;
}

export function plotView(opened: Opened, at: Extract<ReviewPage, { review: 'plot' }>): HomeView {
	const { title, says, plot } = MADE[at.plot](opened);
	const index = PLOTS.indexOf(at.plot);
	const turn = (by: number) => toReview({ review: 'plot', plot: PLOTS[(index + by + PLOTS.length) % PLOTS.length]! });
	const [before, after] = [turn(-1), turn(1)];
	const own = usual(at, opened);
	const isLast = index === PLOTS.length - 1;
	return {
		...own,
		title: PLOT.title(title, index + 1, PLOTS.length),
		prompt: { ...own.prompt, ...(isLast ? {} : { plus: { label: PLOT.next, step: after } }) },
		keys: [PLOT.key, HELP_KEY],
		moves: { left: before, right: after, '4': before, '6': after },
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(plot === null ? PLOT.nothing : says, columns, plot === null ? 'alert' : 'quiet') },
		],
		...(plot === null
			? {}
			: {
					picture:
						({ ascii }) =>
						(columns: number, rows: number) =>
							plotLines(plot, columns, rows, ascii),
				}),
	};
}

const MADE: Readonly<Record<PlotName, (opened: Opened) => ToldPlot>> = {
	springback: springback,
	landed: landed,
	errors: errors,
	pulls: pulls,
	scatter: scatter,
};

function springback({ story }: Opened): ToldPlot {
	const { dies, pulls: points } = springbackPlot(story.state);
	const all = dies.flatMap(({ band }) => band);
	const plot: Plot = {
		x: { label: SPRINGBACK.angle, values: all.map(({ angle }) => angle) },
		y: {
			label: SPRINGBACK.back,
			values: [0, ...all.map(({ high }) => high), ...points.map(({ back }) => back)],
		},
		bands: dies.map(({ band }) => band.map(({ angle, low, high }) => ({ x: angle, low: Math.max(0, low), high }))),
		lines: dies.map(({ band }) => band.map(({ angle, back }) => ({ x: angle, y: back }))),
		marks: [
			...points.map(({ bend, angle, back }) => ({ x: angle, y: back, mark: bendSign(bend) })),
			...(dies.length === 1 ? [] : dies.map(({ band }, i) => bandEnd(band, letterOf(i)))),
		],
	};
	const says = SPRINGBACK.says(dies.map(({ die, bends }, i) => ({ letter: letterOf(i), die, bends })));
	return { title: SPRINGBACK.title, says, plot };
}

/** Dies by letters, since figures are bends. */
const letterOf = (index: number) => String.fromCharCode('A'.charCodeAt(0) + (index % 26));

/** The die's letter where its line ends. */
function bandEnd(band: DieBand['band'], mark: string): Plot['marks'][number] {
	const { angle, back } = band.at(-1)!;
	return { x: angle, y: back, mark };
}

/** How far a pull's band reaches to either side, in pulls. */
const BESIDE = 0.25;

function landed({ states }: Opened): ToldPlot {
	const points = landedPlot(states);
	const plot: Plot = {
		x: {
			label: LANDED.pulls,
			values: points.map((_, i) => i),
			names: points.map((_, i) => String(i + 1)),
		},
		y: {
			label: LANDED.off,
			values: points.flatMap(({ off, low, high }) => [off, low, high]),
		},
		bands: points.map(({ low, high }, i) => [-BESIDE, BESIDE].map((by) => ({ x: i + by, low, high }))),
		levels: [0],
		marks: points.map(({ bend, off }, i) => ({ x: i, y: off, mark: bendSign(bend) })),
	};
	return { title: LANDED.title, says: LANDED.says, plot: points.length === 0 ? null : plot };
}

function errors({ story, sessions }: Opened): ToldPlot {
	const all = sessions();
	const { under, over } = story.view.job.tolerance;
	const marks = all.flatMap((bends, i) =>
		bends.flatMap(({ error }, n) => (error === null ? [] : [{ x: i, y: error, mark: bendSign(n + 1) }])),
	);
	const plot: Plot = {
		x: overSessions(all.length),
		y: {
			label: ERRORS.off,
			values: [-under, over, ...marks.map(({ y }) => y)],
		},
		levels: [-under, 0, over],
		marks,
	};
	return { title: ERRORS.title, says: ERRORS.says({ under, over }), plot: marks.length === 0 ? null : plot };
}

function pulls({ sessions }: Opened): ToldPlot {
	const all = sessions();
	const marks = all.flatMap((bends, i) =>
		bends.flatMap((bend, n) => (bend.pulls === 0 ? [] : [{ x: i, y: bend.pulls, mark: bendSign(n + 1) }])),
	);
	const means = meanPulls(all).flatMap((mean, x) => (mean === null ? [] : [{ x, y: mean }]));
	const plot: Plot = {
		x: overSessions(all.length),
		y: { label: PULLS.pulls, values: [0, ...marks.map(({ y }) => y)], counts: true },
		lines: [means],
		marks,
	};
	return { title: PULLS.title, says: PULLS.says, plot: marks.length === 0 ? null : plot };
}

function scatter({ story }: Opened): ToldPlot {
	const points = scatterPlot(story.state);
	// The first stands on top.
	const rowOf = (index: number) => points.length - 1 - index;
	const plot: Plot = {
		x: {
			label: SCATTER.size,
			values: [0, ...points.flatMap(({ common, before, now }) => [common, before, now])],
		},
		y: {
			label: SCATTER.of,
			values: points.map((_, i) => i),
			names: points.map((_, i) => SCATTER.kind(points[rowOf(i)]!.kind)),
		},
		lines: points.map(({ now }, i) => [
			{ x: 0, y: rowOf(i) },
			{ x: now, y: rowOf(i) },
		]),
		marks: points.flatMap(({ common, before, now }, i) => [
			{ x: common, y: rowOf(i), mark: SCATTER.marks.common },
			{ x: before, y: rowOf(i), mark: SCATTER.marks.before },
			{ x: now, y: rowOf(i), mark: SCATTER.marks.now },
		]),
	};
	return { title: SCATTER.title, says: SCATTER.says, plot };
}

function overSessions(count: number): Plot['x'] {
	const all = Array.from({ length: count }, (_, i) => i);
	return { label: PLOT.sessions, values: all, names: all.map((i) => PLOT.session(count - 1 - i)) };
}

/** A bend as one character: 1 to 9, then letters. */
function bendSign(bend: number): string {
	return bend < 10 ? String(bend) : String.fromCharCode('a'.charCodeAt(0) + ((bend - 10) % 26));
}
