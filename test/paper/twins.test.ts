import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/job/load.ts';
import { copeDrawing } from '../../src/paper/full-size/cope-drawing.ts';
import type { Drawing } from '../../src/paper/full-size/drawing.ts';
import { profileDrawing } from '../../src/paper/full-size/profile-drawing.ts';
import { wrapDrawing } from '../../src/paper/full-size/wrap-drawing.ts';
import { PAPERS, printJob } from '../../src/paper/index.ts';
import type { JobOnPaper } from '../../src/paper/job-on-paper.ts';
import { copeTemplates } from '../../src/tube/cope-template.ts';
import type { Job } from '../../src/tube/job.ts';
import { cutLength, marks } from '../../src/tube/marks.ts';
import { profiles } from '../../src/tube/profile.ts';
import { wrapStrips } from '../../src/tube/wraps.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { readPdf } from '../helpers/paper/pdf.ts';
import { readPaths } from '../helpers/paper/pdf-paths.ts';
import { Agreement } from '../helpers/shop/agreement.ts';
import { onPaper } from '../helpers/shop/on-paper.ts';
import { INCH, inMillimeters } from '../helpers/shop/twin.ts';

const loaded = SAMPLE_JOBS.map((path) => loadJob(path).job).filter(({ units }) => units === 'in');

/** A rail of two dies whose far end meets another tube: of all that is drawn there is some. */
const RAIL: Job = {
	...loaded.find(({ tooling }) => tooling.dies !== undefined)!,
	name: 'Coped rail',
	ends: { far: { cope: { od: 2, angle: 70, offset: 0.25, turn: 30 } } },
};

/** The tube of the fewest sheets, coped the same way. */
const [SHORTEST] = [...loaded].sort((a, b) => cutLength(a, onPaper(a).shape) - cutLength(b, onPaper(b).shape));
const SHORT: Job = { ...SHORTEST!, ends: RAIL.ends! };

/** What is drawn at full size, in mm, without its words. */
function drawn({ job, shape }: JobOnPaper): Drawing['strokes'][] {
	const mark = marks(job, shape, cutLength(job, shape));
	return [
		...profiles(job, shape).map((plane) => profileDrawing(plane, job, mark)),
		wrapDrawing(wrapStrips(job, shape), job),
		...copeTemplates(job, shape).map((template) => copeDrawing(template, job).drawing),
	].map(({ strokes }) => strokes);
}

describe.each([...loaded, RAIL].map((job) => [job.name, job] as const))('%s and the same in millimeters', (_, job) => {
	const [inches, mm] = [onPaper(job), onPaper(inMillimeters(job))];

	it('come to paper with the same numbers, and are drawn alike', () => {
		const agreement = new Agreement();
		const numbers = ({ document, shape, stops, known }: JobOnPaper) => ({ document, shape, stops, known });
		agreement.hold(numbers(inches), numbers(mm), 'paper');
		expect(agreement.wayOf('paper.document.cutLength ')).toBe('length');
		agreement.hold(drawn(inches), drawn(mm), 'drawn');
		const ways = [0, 1].map((i) => agreement.wayOf(`drawn[][].steps[].to[] `) ?? `none ${i}`);
		expect(ways).toEqual(['same', 'same']);
	});
});

const twins = (job: Job) => [onPaper(job), onPaper(inMillimeters(job))] as const;

/** A PDF of `@react-pdf` has its numbers to so much, points. */
const WRITTEN = 1e-3;

describe('a tube and the same in millimeters, read back from the PDF', () => {
	it('have every stroke of wraps and copes at the same place', async () => {
		const parts = ['wraps', 'copes'] as const;
		const [one, other] = await Promise.all(
			twins(SHORT).map(async (of) => readPaths(await printJob(parts, of, PAPERS.letter))),
		);
		expect(other!.map((lines) => lines.length)).toEqual(one!.map((lines) => lines.length));
		const [inches, mm] = [one!, other!].map((pages) =>
			pages.flatMap((lines) => lines.flatMap(({ places }) => places.flat())),
		);
		expect(inches!.length).toBeGreaterThan(1500);
		expect(mm).toHaveLength(inches!.length);
		expect(Math.max(...inches!.map((value, i) => Math.abs(value - mm![i]!)))).toBeLessThan(WRITTEN);
	});

	it('have every mark on the shop sheet, each to its own tape, and every angle and stop alike', async () => {
		const both = twins(RAIL);
		const [one, other] = await Promise.all(
			both.map(async (of) => {
				const pages = await readPdf(await printJob(['sheet'], of, PAPERS.letter));
				return new Set(pages.flatMap(({ texts }) => texts.map(({ text }) => text.trim())));
			}),
		);
		const lengthsIn = (texts: Set<string>) => [...texts].flatMap((text) => readLength(text) ?? []);
		const [inches, mm] = [lengthsIn(one!), lengthsIn(other!)];
		for (const { mark } of both[0].document.bends) {
			for (const length of [mark.fromStart, mark.fromFarEnd]) {
				expect(nearestTo(length, inches)).toBeLessThanOrEqual(1 / 32 + 1e-9);
				expect(nearestTo(length * INCH, mm)).toBeLessThanOrEqual((1 / 32) * INCH + 1e-9);
			}
		}
		const degrees = (texts: Set<string>) => [...texts].filter((text) => /^[\d.]+°/.test(text)).sort();
		expect(degrees(one!).length).toBeGreaterThan(RAIL.checks.length);
		expect(degrees(other!)).toEqual(degrees(one!));
	});
});

/** `16 3/8` or `416.5` as a number; null where the text is something else. */
function readLength(text: string): number | null {
	const [, whole, part = '0', of = '1'] = /^(\d+(?:\.\d+)?)(?: (\d+)\/(\d+))?$/.exec(text) ?? [];
	return whole === undefined ? null : Number(whole) + Number(part) / Number(of);
}

const nearestTo = (value: number, all: readonly number[]) => Math.min(...all.map((each) => Math.abs(each - value)));
