/** What a reader of a record who was not there took for something else, each said now. */
import { describe, expect, test } from 'vitest';
import { answered } from '../../src/session/log/answered.ts';
import type { SetAsk } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import { formatAngle } from '../../src/units/format.ts';
import { fine } from '../../src/words/numbers.ts';
import {
	aimedAt,
	bendVerdict,
	checkVerdict,
	openWords,
	outcomeWords,
	recordHead,
	rotationMade,
} from '../../src/words/paper-record.ts';
import { correctionRows, eventRows } from '../../src/words/record-log.ts';
import type { Run } from '../helpers/session/session-run.ts';
import { TO_FIRST_MEASURE, told, toldOf } from '../helpers/session/told.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { twoDieJob } from '../helpers/shop/two-dies.ts';

const clock = (iso: string) => ({ day: iso.slice(0, 10), time: iso.slice(11, 19), offset: '+00:00' });
const eventsOf = ({ story }: ReturnType<typeof told>, job: Job = hatJob()) =>
	eventRows(answered(story.state), job, clock).map(([line, , what]) => `${line} ${what}`);
const headOf = ({ story }: ReturnType<typeof told>, imported: Parameters<typeof recordHead>[2] = null) =>
	Object.fromEntries(recordHead(story.view, story.state.start, imported, clock));

const left = ({ story }: ReturnType<typeof told>) => [story.state, story.view] as const;

/** Where the center line of the flat hat ends and which way it points there, in degrees: along each straight, then round each arc. */
function hatEnd(straights: readonly number[], angles: readonly number[], clr = 6) {
	let [x, y, way] = [straights[0]!, 0, 0];
	for (const [i, angle] of angles.entries()) {
		// The hat goes up, over and down again.
		const side = i === 1 ? -1 : 1;
		const [from, to] = [(way * Math.PI) / 180, ((way + side * angle) * Math.PI) / 180];
		x += side * clr * (Math.sin(to) - Math.sin(from)) + straights[i + 1]! * Math.cos(to);
		y += side * clr * (Math.cos(from) - Math.cos(to)) + straights[i + 1]! * Math.sin(to);
		way += side * angle;
	}
	return { x, y, way };
}

describe('a record says', () => {
	const TAKEN = [...TO_FIRST_MEASURE, { angles: [15, 15] }, { do: 'accept' }];

	test('of a bend that was pulled and given up that it is bent, and by how much', () => {
		const { story } = told(...TO_FIRST_MEASURE, { angles: [15, 15.2] }, { scrap: 'creased' });
		const { state, view } = story;
		expect(bendVerdict(view.bends[0]!, view.job)).toBe('pulled, not taken');
		expect(bendVerdict(view.bends[1]!, view.job)).toBe('not made');
		const open = openWords(state, view);
		expect(open).toContain('Bend 1 was pulled but not taken: last measured 15.2°.');
		expect(open).toContain('Bend 2 was not made.');
		expect(outcomeWords(state, view)).toEqual(['The tube was scrapped: creased.']);
	});

	test('of one that was left where the far end will be, the bends made as they are and the others as aimed at', () => {
		expect(outcomeWords(...left(told({ quit: true })))).toEqual([
			'The tube is not finished. No bend has been taken yet.',
		]);
		const run = told(...TAKEN, { quit: true });
		const [state, view] = left(run);
		const made = view.bends.map((bend, i) => bend.made?.angle ?? aimedAt(view, i + 1));
		const [drawn, now] = [view.bends.map(({ design }) => design), made].map((angles, which) =>
			hatEnd(which === 0 ? state.design.shape.straights : view.asBuilt.straights, angles),
		);
		// What the drawing wants of the bends to come would not bring the end home.
		expect(made.slice(1)).not.toEqual(view.bends.slice(1).map(({ design }) => design));
		const off = fine(Math.hypot(now!.x - drawn!.x, now!.y - drawn!.y), view.job);
		const turned = formatAngle(Math.abs(now!.way - drawn!.way), 1);
		expect(outcomeWords(state, view)).toEqual([
			`The tube is not finished. If the bends that are left end as aimed at, the far end will be ${off} from its place and ${turned} from its direction.`,
		]);
	});

	test('how the tube was turned as the drawing tells it', () => {
		expect([
			rotationMade(-89.19, 270),
			rotationMade(-178.57, 180),
			rotationMade(0.02, 0),
			rotationMade(-89.2, -90),
		]).toEqual(['270.8°', '181.4°', '0°', '-89.2°']);
	});

	test('of one that was pulled and never measured where the dial stood', () => {
		const { story } = told(...TO_FIRST_MEASURE, { quit: true });
		const held = story.view.bends[0]!.pulls[0]!.loaded;
		expect(openWords(story.state, story.view)).toContain(
			`Bend 1 was pulled but not taken: last held at ${held}° and not measured.`,
		);
	});

	test('which marks and turns were told otherwise than asked for, and what else was measured', () => {
		const lines = eventsOf(
			told(
				(run: Run) => ({ ready: true, mark: (run.outputs.at(-1) as SetAsk).mark.fromStart + 1 / 8 }),
				...TO_FIRST_MEASURE.slice(1),
				{ angles: [15, 15] },
				{ do: 'accept' },
				{ evidence: { kind: 'angle', bend: 1, reading: 15.1 } },
			),
		);
		expect(lines[0]).toMatch(/^1 tube set at bend 1; mark as made, from the start end of bend 1: \d/);
		expect(lines.at(-1)).toBe('5 angle of bend 1, measured again: 15.1°');
		expect(eventsOf(told(...TAKEN))).toEqual([]);
	});

	test('what a corrected reading was before', () => {
		const lines = eventsOf(told(...TO_FIRST_MEASURE, { angles: [13.2, 13.2] }, { amend: { entry: 3, reading: 13.5 } }));
		expect(lines).toEqual(['4 line 3 corrected: angle finder is 13.5°, not 13.2°']);
	});

	test('of which heat a tube was told to be, and which piece it is', () => {
		const run = told({ heat: 'H-9' });
		expect(eventsOf(run)).toEqual(['1 this tube is of heat H-9']);
		expect(headOf(run)).toMatchObject({ Heat: 'H-9' });
		expect(headOf(run)).not.toHaveProperty('Batch');
		const { view, state } = run.story;
		const piece = { ...run, story: { ...run.story, view: { ...view, piece: 2, quantity: 3 }, state } };
		expect(headOf(piece)).toMatchObject({ Batch: 'piece 2 of 3' });
	});

	test('where it was taken over from, and that a bender was simulated', () => {
		const run = told({ quit: true });
		expect(headOf(run)).not.toHaveProperty('Bent elsewhere');
		expect(headOf(run, { from: '/media/stick', at: '2026-03-01T08:00:00.000Z' })).toMatchObject({
			'Bent elsewhere': 'Imported from /media/stick, 2026-03-01 08:00 +00:00',
		});
		expect(headOf(run)).toMatchObject({ State: 'interrupted', Bender: 'shop' });
		const { state } = run.story;
		const simulated = { ...state, start: { ...state.start, simulated: { seed: 7 } } };
		expect(headOf({ ...run, story: { ...run.story, state: simulated } })).toMatchObject({
			State: 'interrupted, simulated',
			Bender: 'shop, simulated',
		});
	});

	test('every die that bends were bent on, with its radius', () => {
		const job = twoDieJob();
		const names = [job.tooling.die, ...Object.keys(job.tooling.dies ?? {})];
		const { Dies } = headOf(toldOf(job, { quit: true }));
		for (const name of names) expect(Dies).toMatch(new RegExp(`${name}, radius \\d`));
	});

	test('which corrections changed what was to come, and none that changed nothing', () => {
		const { story } = told(...TAKEN);
		const changed = correctionRows(story.corrections, hatJob());
		expect(changed).toHaveLength(1);
		expect(changed[0]![1]).toMatch(/^Corrected after bend 1\. Bend 2: .*\(was .*with the drawing's numbers\.$/);
		const [first] = story.corrections;
		const { remaining } = first!.correction;
		const same = remaining.map((each) => ({
			...each,
			fromStart: each.was.fromStart,
			angle: each.was.angle,
			rotation: each.was.rotation,
		}));
		const nothing = { ...first!, correction: { ...first!.correction, remaining: same } };
		expect(correctionRows([nothing], hatJob())).toEqual([]);
	});

	test('by how much trim changed what was read, and nothing where no tape shows it', () => {
		const job = plainJob();
		expect(checkVerdict(null, 2, job)).toBe('-');
		expect(checkVerdict(true, 0.001, job)).toBe('inside');
		expect(checkVerdict(false, 2, job)).toBe('outside: trim still on made it 2 in more');
		expect(checkVerdict(true, -0.25, job)).toBe('inside: trim still on made it 1/4 in less');
	});
});
