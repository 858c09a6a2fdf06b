import { bendsIn, type Draft } from '../../job/draft/draft.ts';
import { type DraftPreview, draftFaults, draftPreview } from '../../job/draft/preview.ts';
import { jobWarnings } from '../../session/plan/job-warnings.ts';
import { drawingAxes } from '../../tube/drawing-axes.ts';
import { corners, frames } from '../../tube/frames.ts';
import type { Job } from '../../tube/job.ts';
import { joints } from '../../tube/joints.ts';
import { cutLength, marks } from '../../tube/marks.ts';
import { sizeAlong } from '../../tube/overall.ts';
import { drawnViews, type View } from '../../tube/principal-views.ts';
import { finishedShape } from '../../tube/resolve.ts';
import type { Shape } from '../../tube/shape.ts';
import { dot, subtract } from '../../tube/vector.ts';
import type { Warning } from '../../tube/warnings.ts';
import {
	growthCaption,
	growthLabel,
	growthRow,
	heedWords,
	lengthWords,
	sizeWords,
} from '../../words/job-form/growing.ts';
import { UNITS_BRIEF } from '../../words/job-form/pages.ts';
import { LENGTH_KEYS, nextLengths, type ShownJob } from '../../words/lengths.ts';
import { drawTube } from '../drawing/tube-drawing.ts';
import type { HomeView } from '../home/home-view.ts';
import type { Room, Section } from '../session/pages/page.ts';
import type { Look } from '../shell/look.ts';
import { type Line, line, span, wrapped } from '../text/line.ts';
import { answeredForm, draftIn, type JobForm } from './job-form.ts';

/** What the job comes to with what stands in the field, where that is an answer already; else without it. Null: nothing yet. */
export function growing(form: JobForm, typed: string): DraftPreview | null {
	const tried = typed === '' ? null : answeredForm(form, typed);
	const ahead = tried?.message === null ? soFar(draftIn(tried.form), form) : null;
	const so = ahead ?? soFar(draftIn(form), form);
	return so === null ? null : shownBy(so, form);
}

function shownBy(so: DraftPreview, { lengths }: JobForm): DraftPreview {
	const job: ShownJob = { ...so.job, lengths: lengths ?? null };
	return { ...so, job };
}

/** The key that shows the lengths another way, where there are any to be seen. */
export function lengthsShortcut(form: JobForm, so: DraftPreview | null): Pick<HomeView, 'keys' | 'shortcuts'> {
	if (so === null || !hasShape(draftIn(form))) return {};
	const lengths = nextLengths(so.job);
	const step = { step: 'formShown', form: { ...form, lengths } } as const;
	return { keys: [['u', LENGTH_KEYS[lengths], UNITS_BRIEF]], shortcuts: { u: step } };
}

function soFar(draft: Draft, { shop }: JobForm): DraftPreview | null {
	// Of a file that is being mended nothing is drawn before it is a job.
	return draft.whole && draftFaults(draft, shop).length > 0 ? null : draftPreview(draft, shop);
}

/** Whether there may be something to draw already. */
export function hasShape({ file, part }: Draft): boolean {
	return part.angle !== undefined || part.run !== undefined || bendsIn({ file }) > 0;
}

/** A warning about an end that is not known yet would be about nothing. */
const ABOUT_THE_END = new Set(['stock-short', 'short-follow']);

function warningsOf({ job, growth, ended }: DraftPreview): Warning[] {
	return jobWarnings(job, growth).filter(({ code }) => ended || !ABOUT_THE_END.has(code));
}

/** Rows that the questions and the cut length want besides. */
const OTHER_ROWS = 7;

/** The layout as far as it is known: for each bend mark, turn and angle, as the hands need them; the cut length; what to heed. */
export function growthSections(so: DraftPreview | null, { columns, rows: room }: Room): Section[] {
	if (so === null) return [];
	const { job, growth, ended } = so;
	const shape = finishedShape(job, growth);
	const cut = cutLength(job, shape);
	const known = ended ? cut : cut - shape.straights.at(-1)!;
	const rows = marks(job, shape, cut).map(({ fromStart }, at): Line => {
		const text = growthRow(fromStart, { ...shape.bends[at]!, number: at + 1 }, job);
		return [span(growthLabel(at + 1), at + 1 === so.now ? 'strong' : 'quiet'), span(text)];
	});
	// The last bends are the ones that one is at.
	const shown = rows.slice(-Math.max(2, room - OTHER_ROWS));
	const { whole, short } = lengthWords(known, overAllWords(so), ended, job);
	const length = whole.length <= columns ? whole : short;
	const heed = heedWords(warningsOf(so), job).map(
		(text): Section => ({ rank: 3, lines: wrapped(`! ${text}`, columns, 'alert', 2) }),
	);
	return [{ rank: 2, lines: [...shown, line(length, 'strong')] }, ...heed];
}

/** How large the tube so far is, outside to outside, along the drawing's own axes; of a tube by bends along straight 1 and square to it. */
function overAllWords({ job, growth, ended }: DraftPreview): string {
	const whole = finishedShape(job, growth);
	const shape = ended ? whole : { ...whole, straights: [...whole.straights.slice(0, -1), 0] };
	const at = frames(shape);
	const axes = drawingAxes(job.shape, shape);
	const { od } = job.tube;
	const [x, y, z] = [axes.x, axes.y, axes.z].map((axis) => sizeAlong(at, od, axis)) as [number, number, number];
	return sizeWords({ x, y, z: z > od * (1 + STANDS_OUT) ? z : null }, job);
}

/** A tube that stands out of its plane by less than this part of its diameter lies flat. */
const STANDS_OUT = 1e-6;

type CaptionSide = Parameters<typeof growthCaption>[0];

/** The views for the form: those of a drawing by points are its own. `start`: where the start end is in the first of them. */
function drawnOn(job: Job, shape: Shape): { views?: readonly View[]; start: CaptionSide } {
	if (job.shape.kind === 'bends') return { start: 'left' };
	const points = corners(shape);
	const views = drawnViews(points, drawingAxes(job.shape, shape));
	const way = subtract(points.at(-1)!, points[0]!);
	const [across, up] = [dot(way, views[0]!.right), dot(way, views[0]!.up)];
	const level = Math.abs(across) >= Math.abs(up);
	return { views, start: level ? (across < 0 ? 'right' : 'left') : up < 0 ? 'above' : 'below' };
}

/** The tube so far, the bend in hand thick. */
export function growthPicture(so: DraftPreview | null, { ascii }: Look): (columns: number, rows: number) => Line[] {
	if (so === null) return () => [];
	const { job, growth, now, ended } = so;
	const shape = finishedShape(job, growth);
	const drawn = drawnOn(job, shape);
	const met = ended ? joints(job, shape) : [];
	const words = growthCaption(drawn.start, met.length > 0, ended);
	return (columns, rows) => {
		const { rows: dots, views } = drawTube(shape, now, columns, rows - 1, ascii, shape, drawn.views, met);
		const caption = views === '' ? words : `${words}; ${views}`;
		return [...dots.map((row) => line(row)), ...wrapped(caption, columns, 'quiet').slice(0, 1)];
	};
}
