import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSession } from '../../src/journal/catalogue.ts';
import { LiveSession } from '../../src/journal/live.ts';
import { ask } from '../../src/session/ask.ts';
import { initial } from '../../src/session/log/fold.ts';
import { readBack, startIn } from '../../src/session/log/read-back.ts';
import { upToDate } from '../../src/session/log/start.ts';
import type { Ask, SetAsk } from '../../src/session/protocol/asks.ts';
import { sessionView } from '../../src/session/report/views.ts';

/**
 * Logs of the program as it was before the drawing's corners held, and beside them the figures that it gave for each (`figures.json`): growth
 * stated by the job and kept with the die, expected and announced, refused with the old numbers; from the far end, for the other hand, by
 * points in mm; one left after its first bend and one before any answer. Logs and figures were made by that program (commit a2e5c42), its
 * simulated operator answering (seeds from 900,100; of each job the first that took at most 24 records), with a fixed clock and fixed ids.
 */
const OLD = fileURLToPath(new URL('../fixtures/logs-before-corners-held', import.meta.url));

interface Figures {
	cut: number;
	drawn: number[];
	planned: { fromStart: number; angle: number; rotation: number }[];
	checks: number[];
	status: string;
	made: (number | null)[];
	asBuilt: { straights: number[]; bends: object[]; endOffset: number; endAngle: number } | null;
}
const FIGURES: Record<string, Figures> = JSON.parse(readFileSync(join(OLD, 'figures.json'), 'utf8'));
const IDS = Object.keys(FIGURES);

let home = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'before-corners-'));
	mkdirSync(join(home, 'sessions'));
	cpSync(OLD, join(home, 'sessions'), { recursive: true });
});
afterAll(() => rmSync(home, { recursive: true }));

const recordsOf = (id: string) => readSession(home, id).records;
const startOf = (id: string) => upToDate(startIn(readSession(home, id).first!));

/**
 * Since then wrong numbers read long ago count for less, a number on a dial for what rounds to it, and what is near its edge for more: that alone moves
 * what follows from readings, and so do other beliefs about unknown machines: places asked for by a thousandth at most, made angles by 11: the target of a
 * bend that nobody measured. Another rule of corners would move them by a hundredth of an inch and more.
 */
const [ASKED, MADE] = [0.002, 0.012];
/** One of them is in millimeters, so that its lengths move by more. */
const MM = 5;

/** The same within so much, whatever stands in it. */
function near(value: unknown, within = 5e-10): unknown {
	if (typeof value === 'number') return expect.closeTo(value, -Math.log10(2 * within));
	if (Array.isArray(value)) return value.map((each) => near(each, within));
	if (typeof value !== 'object' || value === null) return value;
	return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, near(each, within)]));
}

/** What of a question the rule of corners decides on. */
function placesIn(asked: Ask): object | null {
	if (asked.ask === 'check') return { check: asked.name, design: asked.design };
	if (asked.ask !== 'set') return null;
	const { bend, seat, design, target, mark, rotation, tubeTurn, face, around, plan, was } = asked;
	return { bend, seat, design, target, mark, rotation, tubeTurn, face, around, plan, was };
}

/** Questions that no correction has a part in: those before a bend was made, and all where the old numbers were taken each time. */
function askedAsDrawn(id: string): { entry: number; asked: object }[] {
	const all = recordsOf(id).slice(1);
	const isKept = /oldplan|farend/.test(id);
	const end = isKept ? all.length : all.findIndex(({ ask: asked }) => (asked as SetAsk).bend === 2);
	return all.slice(0, end < 0 ? all.length : end).flatMap(({ seq, ask: asked }) => {
		const places = placesIn(asked as Ask);
		// A correction that was then refused stands in the question that it was refused at.
		const isRefused = places !== null && 'plan' in places && places.plan === 'new' && (asked as SetAsk).bend > 1;
		return places === null || isRefused ? [] : [{ entry: seq, asked: places }];
	});
}

describe.each(IDS)('%s, begun before corners held', (id) => {
	const figures = FIGURES[id]!;

	it('is laid out as it was begun', () => {
		const start = startOf(id);
		expect(start.corners).toBeUndefined();
		const { design, plan, piece } = initial(start);
		expect(piece).toEqual(near(figures.cut));
		expect(design.marks).toEqual(near(figures.drawn));
		expect(plan.current).toEqual(near(figures.planned));
		expect(design.checks.map((check) => check.design)).toEqual(near(figures.checks));
	});

	it('asks the same places, entry by entry', () => {
		const records = recordsOf(id);
		const asked = askedAsDrawn(id);
		if (figures.status === 'done') expect(asked.length).toBeGreaterThan(0);
		for (const { entry, asked: was } of asked) {
			const now = ask(readBack(records.slice(0, entry)));
			expect(now === null ? null : placesIn(now)).toEqual(near(was, ASKED));
		}
	});

	it('comes to the same tube', () => {
		const { status, bends, asBuilt } = sessionView(readBack(recordsOf(id)));
		expect(status).toBe(figures.status);
		expect(bends.map(({ made }) => made?.angle ?? null)).toEqual(near(figures.made, MADE));
		if (figures.asBuilt === null) expect(asBuilt).toBeNull();
		else expect(asBuilt).toMatchObject(near(figures.asBuilt, (id.endsWith('points') ? MM : 1) * MADE) as object);
	});
});

describe('a session begun before corners held and gone on with', () => {
	const world = { program: 'test', now: () => new Date('2026-04-01T08:00:00Z'), random: () => 'x' };
	const resumed = (tail: string) =>
		LiveSession.resume({ ...world, home }, IDS.find((id) => id.endsWith(tail))!, undefined, []);

	it('has the marks of the radius expected then, tells them from the drawing’s, and takes the old numbers', () => {
		const session = resumed('begun');
		const [planned, drawn] = [FIGURES[session.id]!.planned, FIGURES[session.id]!.drawn];
		const first = session.ask as SetAsk;
		expect(first.mark.fromStart).toEqual(near(planned[0]!.fromStart));
		expect(first.mark.moved).toEqual(near(planned[0]!.fromStart - drawn[0]!));
		expect(first.mark.moved).not.toBe(0);
		expect(session.opening.some((output) => 'note' in output && output.note === 'corrected')).toBe(false);
		session.answerText('{"plan":"old"}');
		const old = session.ask as SetAsk;
		expect(old).toMatchObject({ ask: 'set', plan: 'old', mark: { moved: 0 } });
		session.answerText('{"plan":"new"}');
		expect((session.ask as SetAsk).mark).toEqual(first.mark);
		session.close();
	});
});
