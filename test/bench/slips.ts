/**
 * Whether slips are asked about, and right readings left alone: whole sessions of simulated shops, four tubes each, in the usual world and in one
 * with twice the scatter. At one ask in three a number of the answer is also tried as it might have been typed wrong; the session goes on
 * with the right one.
 */
import { type Draw, draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { checkReadingSd, markSd } from '../../src/session/estimate/hands.ts';
import { lessonOf } from '../../src/session/estimate/lesson-of-session.ts';
import type { Event } from '../../src/session/log/events.ts';
import { evolve } from '../../src/session/log/fold.ts';
import { learnedPrior } from '../../src/session/log/start.ts';
import { nextEntry, type State } from '../../src/session/log/state.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Lesson } from '../../src/springback/history.ts';
import { JOBS } from './calibration-jobs.ts';
import { driven } from './driven.ts';
import { startOf } from './fit-made.ts';

export interface Slips {
	right: number;
	questioned: number;
	slips: number;
	asked: number;
	missed: string[];
}

type Key = 'pointer' | 'length' | 'loaded' | 'released' | 'angle' | 'check';

const RIGHT: World = { ...USUAL_SHOP, blunders: { off: 0, swapped: 0 } };
export const WORLDS: Readonly<Record<string, World>> = {
	usual: RIGHT,
	'twice the scatter': { ...RIGHT, scatter: [2, 2] },
};

/** A slip matters from so many errors of the reading's own on: less, and the number is as good as right. */
const MATTERS = 4;

/** So many shops of a world, four tubes each. */
export function slipsIn(world: World, shops: number, seed: number): Slips {
	const found: Slips = { right: 0, questioned: 0, slips: 0, asked: 0, missed: [] };
	for (let shop = 0; shop < shops; shop++) {
		const job = JOBS[shop % 2]!;
		const draw = draws(seed + 2 * shop);
		const chance = draws(seed + 2 * shop + 1);
		const station = new Station(job, world, draw);
		const lessons: Lesson[] = [];
		for (let tube = 0; tube < 4; tube++) {
			if (tube > 0) station.freshTube();
			const at = new Date(Date.UTC(2026, 0, 1, tube)).toISOString();
			const start = { ...startOf(job), ...learnedPrior(job, lessons), learn: true, id: `tube ${tube}`, at };
			const state = driven(start, { station, world, draw }, (open, before, action) =>
				counted(open, before, action, chance, found),
			);
			const lesson = lessonOf(state);
			if (lesson) lessons.push(lesson);
		}
	}
	return found;
}

function counted(open: Ask, before: State, action: Action, chance: Draw, found: Slips): void {
	if (open.ask === 'confirm') return;
	const numbers = numbersIn(open, action);
	if (numbers.length === 0) return;
	const events = eventsOf(before, action);
	found.right += numbers.length;
	found.questioned += Number(isDoubted(events));
	if (!chance.happens(1 / 3)) return;
	const [key, value] = numbers[Math.floor(chance.uniform(0, numbers.length))]!;
	const wrong = slipped(key, value, open, before, chance);
	if (wrong === null) return;
	found.slips += 1;
	if (isAsked(before, open, action, key, value, wrong)) found.asked += 1;
	else found.missed.push(`${key} ${value} as ${wrong}`);
}

function numbersIn(open: Ask, action: Action): [Key, number][] {
	switch (action.do) {
		case 'ready':
			return (['pointer', 'length'] as const).flatMap((key): [Key, number][] =>
				action[key] === undefined ? [] : [[key, action[key]]],
			);
		case 'loaded':
			return [
				['loaded', action.loaded],
				...(action.released === undefined ? [] : [['released', action.released] as [Key, number]]),
			];
		case 'angles':
			return [['angle', action.angles[0]!]];
		case 'reading':
			return open.ask === 'check' && open.kind !== 'ovality' ? [['check', action.reading]] : [];
		default:
			return [];
	}
}

const eventsOf = (state: State, action: Action): readonly Event[] | null => {
	const decision = answerEvents({ action }, state);
	return 'refused' in decision ? null : decision.events;
};

/** Refused, or asked again. */
const isDoubted = (events: readonly Event[] | null) =>
	events === null || events.some(({ type }) => type === 'reading-doubted');

/** The number as it might have been typed wrong, by enough to matter; null where this slip leaves it as good as right. */
function slipped(key: Key, value: number, open: Ask, { start }: State, chance: Draw): number | null {
	const isLength = key === 'length' || (open.ask === 'check' && open.kind !== 'angle');
	const kinds = [moved, swapped, doubled, ...(isLength ? [otherUnit, byAnInch] : [])];
	const wrong = kinds[Math.floor(chance.uniform(0, kinds.length))]!(value, chance);
	const check = open.ask === 'check' ? start.job.checks.find(({ name }) => name === open.name) : undefined;
	const own = check ? checkReadingSd(start, check) : key === 'length' ? markSd(start) : 0.25;
	return wrong === null || Math.abs(wrong - value) < MATTERS * own ? null : Number(wrong.toFixed(4));
}

const moved = (value: number, chance: Draw) => (chance.happens(0.5) ? value * 10 : value / 10);
const otherUnit = (value: number, chance: Draw) => (chance.happens(0.5) ? value * 25.4 : value / 25.4);
const byAnInch = (value: number, chance: Draw) => value + (chance.happens(0.5) ? 1 : -1);

function swapped(value: number, chance: Draw): number | null {
	return changed(value, chance, (letters, at) => {
		const next = letters[at + 1] === '.' ? at + 2 : at + 1;
		if (!/\d/.test(letters[next] ?? '')) return null;
		const copy = [...letters];
		[copy[at], copy[next]] = [copy[next]!, copy[at]!];
		return copy;
	});
}

function doubled(value: number, chance: Draw): number | null {
	return changed(value, chance, (letters, at) => letters.toSpliced(at, 0, letters[at]!));
}

function changed(value: number, chance: Draw, how: (letters: string[], at: number) => string[] | null): number | null {
	const letters = [...String(Number(value.toFixed(3)))];
	const places = letters.flatMap((letter, at) => (/\d/.test(letter) ? [at] : []));
	const now = how(letters, places[Math.floor(chance.uniform(0, places.length))]!);
	return now === null ? null : Number(now.join(''));
}

/** Whether the program asks about it: at once, or, where it is the first of two, beside the second, which is right. */
function isAsked(before: State, open: Ask, action: Action, key: Key, right: number, wrong: number): boolean {
	const events = eventsOf(before, typedWrong(action, key, wrong));
	if (isDoubted(events)) return true;
	if (open.ask !== 'measure') return false;
	const next = evolve(before, { entry: nextEntry(before), at: before.start.at, events: events! });
	return next.phase.at === 'measure' && isDoubted(eventsOf(next, { do: 'angles', angles: [right] }));
}

function typedWrong(action: Action, key: Key, wrong: number): Action {
	if (action.do === 'angles') return { ...action, angles: [Math.abs(wrong)] };
	if (action.do === 'reading') return { ...action, reading: wrong };
	return { ...action, [key]: key === 'loaded' ? Math.abs(wrong) : wrong } as Action;
}

export function slipsLine(name: string, { right, questioned, slips, asked }: Slips): string {
	const part = (of: number, all: number) => `${((100 * of) / all).toFixed(2)} %`;
	return `${name.padEnd(20)} ${slips} slips, asked about ${part(asked, slips)}; ${right} right readings, questioned ${part(questioned, right)}`;
}
