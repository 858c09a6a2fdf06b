import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../../src/job/load.ts';
import type { Event, EventType } from '../../../src/session/log/events.ts';
import { isEvent } from '../../../src/session/log/form/event.ts';
import { startIn, UnknownRecord } from '../../../src/session/log/read-back.ts';
import { modelName } from '../../../src/springback/model-name.ts';
import { startOf } from '../../helpers/session/session-run.ts';
import { twoDieJob } from '../../helpers/shop/two-dies.ts';

const at = '2026-01-01T00:00:00.000Z';
const reading = { of: 'loaded', value: 20, bend: 1, stop: 20 } as const;

/** One of every type, with all that it may hold. */
const EVENTS: { readonly [T in EventType]: Extract<Event, { type: T }> } = {
	'tube-set': { type: 'tube-set', bend: 1 },
	'tube-still': { type: 'tube-still', bend: 1 },
	'reading-taken': { type: 'reading-taken', reading: { of: 'check', value: 4, name: 'drop' } },
	'reading-noted': { type: 'reading-noted', reading: { ...reading, evidence: 'leg', amends: 3 } },
	'reading-doubted': {
		type: 'reading-doubted',
		reading,
		expected: { value: 19, sd: 0.3 },
		reason: [
			{ code: 'not-expected', expected: 19, sd: 0.3 },
			{ code: 'look-at', kind: 'drop', bend: 1, angle: 17, slip: { of: 'mark', bend: 1, was: 9, would: 10 } },
			{ code: 'readings-differ', values: [15, 19], most: 1 },
		],
		others: [15],
		rest: [{ of: 'released', value: 15, bend: 1 }],
	},
	'doubt-settled': { type: 'doubt-settled', reading, count: 2, setAside: [15], kept: true, first: true },
	'measuring-skipped': { type: 'measuring-skipped', bend: 1 },
	'check-skipped': { type: 'check-skipped', name: 'drop' },
	'plan-chosen': { type: 'plan-chosen', plan: 'old' },
	'tube-taken-out': { type: 'tube-taken-out', bend: 1 },
	'bend-accepted': { type: 'bend-accepted', bend: 1, declined: 2, unmeasured: { kind: 'check', name: 'drop' } },
	'pull-chosen': { type: 'pull-chosen', bend: 1, wanted: 17.5 },
	'relief-chosen': { type: 'relief-chosen', bend: 1 },
	'bend-reopened': { type: 'bend-reopened', bend: 1, how: 'pull' },
	'tube-scrapped': { type: 'tube-scrapped', why: 'kinked' },
	'record-voided': { type: 'record-voided', entry: 1 },
	'reading-amended': { type: 'reading-amended', entry: 1, of: 'angle', value: 15 },
	'draft-kept': { type: 'draft-kept', draft: { of: 'loaded', value: 20 } },
	'note-written': { type: 'note-written', text: 'slack in the clamp' },
	'heat-told': { type: 'heat-told', heat: '4711' },
	'session-left': { type: 'session-left' },
	'session-resumed': {
		type: 'session-resumed',
		anew: {
			model: modelName(),
			prior: startOf(twoDieJob()).prior,
			from: { exact: { sessions: 1, pulls: 3 }, near: [] },
		},
	},
};

/** What is not there in every one of its kind. */
const MAY_BE_ABSENT: Readonly<Partial<Record<EventType, string[]>>> = {
	'reading-taken': ['reading.name'],
	'reading-noted': ['reading.bend', 'reading.stop', 'reading.evidence', 'reading.amends'],
	'reading-doubted': [
		'reading.bend',
		'reading.stop',
		'reason.1.bend',
		'reason.1.angle',
		'reason.1.slip',
		'rest.0.bend',
	],
	'doubt-settled': ['reading.bend', 'reading.stop', 'kept', 'first'],
	'bend-accepted': ['declined', 'unmeasured', 'unmeasured.name'],
	'pull-chosen': ['wanted'],
	'session-resumed': ['anew', 'anew.from'],
};
const IN_A_START =
	/^(model|corners|growthFrom|dies|job\.(mayOpen|quantity|tolerance\.(shape|direction)|tooling\.dies|shape\.bends\.\d+\.die))$/;
/** Of each die by its name, and of a filter's parts what an older version did not have. */
const IN_PARTS =
	/^(dies|job\.tooling\.dies)\.[^.]+(\.(growthFrom|clr|clamp|follow|maxAngle))?$|(^|\.)prior\.(?!mean|cov)/;

/** A value with what stands at a place of it taken away, or something else put there. */
function spoilt(value: unknown, [first, ...rest]: readonly string[], put?: { to: unknown }): unknown {
	const copy: Record<string, unknown> | unknown[] = Array.isArray(value) ? [...value] : { ...(value as object) };
	const holder = copy as Record<string, unknown>;
	if (rest.length > 0) holder[first!] = spoilt(holder[first!], rest, put);
	else if (put === undefined) delete holder[first!];
	else holder[first!] = put.to;
	return copy;
}

/** Every place in a value, by the keys that lead there. */
function places(value: unknown): string[][] {
	if (typeof value !== 'object' || value === null) return [];
	return Object.entries(value).flatMap(([key, each]) => [[key], ...places(each).map((below) => [key, ...below])]);
}

const valueAt = (value: unknown, place: readonly string[]): unknown =>
	place.reduce((held, key) => (held as Record<string, unknown>)[key], value);

/** What never stands where that does. */
function nonsense(value: unknown): unknown[] {
	const others = [true, 'nonsense', 1e-3, [], {}, [[]]];
	return others.filter((other) => kindOf(other) !== kindOf(value));
}
/** Null stands for a number that there is none of. */
const kindOf = (value: unknown) => (value === null ? 'number' : Array.isArray(value) ? 'list' : typeof value);

/** The places at which nothing but what stands there is taken, and those that may be absent, by what an assertion says of the value with that. */
function wanted(value: unknown, takes: (spoilt: unknown) => boolean, isFree: (place: string) => boolean) {
	const all = places(value).filter((place) => !isFree(place.join('.')));
	const believed = all.flatMap((place) =>
		nonsense(valueAt(value, place)).flatMap((to) =>
			takes(spoilt(value, place, { to })) ? [`${place.join('.')}: ${to}`] : [],
		),
	);
	const isKey = (place: readonly string[]) => !/^\d+$/.test(place.at(-1)!);
	const mayBeAbsent = all
		.filter((place) => isKey(place) && takes(spoilt(value, place)))
		.map((place) => place.join('.'));
	return { believed, mayBeAbsent };
}

describe('an event', () => {
	it.each(Object.entries(EVENTS))('%s is read only where each of its fields is what it can be', (type, event) => {
		expect(isEvent(event)).toBe(true);
		const { believed, mayBeAbsent } = wanted(event, isEvent, () => false);
		expect(believed).toEqual([]);
		expect(mayBeAbsent.filter((place) => !IN_PARTS.test(place))).toEqual(MAY_BE_ABSENT[type as EventType] ?? []);
	});
});

const JOBS = join(import.meta.dirname, '..', '..', '..', 'jobs');
const SAMPLES = readdirSync(JOBS).filter((name) => name.endsWith('.json'));

describe('the first record', () => {
	it.each(SAMPLES)('of %s is read only where each of its fields is what it can be', (name) => {
		const { job } = loadJob(join(JOBS, name));
		const start = startOf(job);
		const takes = (start: unknown) => {
			try {
				return startIn({ seq: 0, at, start }) !== null;
			} catch (error) {
				if (error instanceof UnknownRecord) return false;
				throw error;
			}
		};
		expect(takes(start)).toBe(true);
		const { believed, mayBeAbsent } = wanted(start, takes, (place) => place.startsWith('jobSource'));
		expect(believed).toEqual([]);
		expect(mayBeAbsent.filter((place) => !IN_A_START.test(place) && !IN_PARTS.test(place))).toEqual([]);
	});
});
