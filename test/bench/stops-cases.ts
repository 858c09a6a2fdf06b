/** The cases that are compared: which shop, what is asked of its bends, by which rules, and how many tubes. */
import { ELSEWHERE, FOREIGN, ROUGH } from '../../src/practice/other-shops.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { oracle, tubeOracle } from './stops-oracle.ts';
import { session } from './stops-session.ts';
import type { Rule, Station } from './stops-station.ts';
import type { Trial } from './stops-tally.ts';
import { carryOver, creep } from './stops-thumb.ts';
import { told } from './stops-told.ts';

export interface Case {
	name: string;
	rules: Readonly<Record<string, (station: Station) => Rule>>;
	trial: Trial;
	/** Tubes bent before on the same machine: one line for each. */
	earlier: readonly number[];
	tubes: number;
	/** `stated`: stated risks against what happened, too. `learner`: how much worse than an oracle that learns the tube, at the same risk. `first`: what a first stop can do. */
	more?: 'stated' | 'learner' | 'first';
}

const ours = { session, oracle };

const even = (limit: number, world: World = USUAL_SHOP): Trial => ({
	world,
	tolerance: { under: limit, over: limit },
	risk: 0.02,
	angles: { bends: 4, low: 30, high: 120 },
});
const hats = [14, 31, 17];
const low = { world: USUAL_SHOP, tolerance: { under: 0.5, over: 0.25 }, angles: hats };
/** Worlds whose oracle sets a mark that is kept; of the others only the program's own figures count. */
const MARKED = 'hardening, backlash, heavy tails, drift, coarse dial, ramp onset, late onset, free lag'.split(', ');
const cases: Case[] = [];

function add(name: string, rules: Case['rules'], trial: Trial, earlier: number[], tubes: number, more?: Case['more']) {
	cases.push({ name, rules, trial, earlier, tubes, ...(more ? { more } : {}) });
}

add('even .5', { creep, 'carry-over': carryOver }, even(0.5), [0, 3], 2000);
add('even .5', { session }, even(0.5), [0, 1], 4000);
add('even .5', ours, even(0.5), [3], 20_000);
add('even .5', { session }, even(0.5), [10], 1500);
add('even 1.0', ours, even(1), [0, 3], 4000);
for (const risk of [0.05, 0.1]) {
	add(`under .5 over .25 risk ${risk}`, ours, { ...low, risk }, [0, 3], 4000, 'learner');
	// As much as history can ever give: what is then still missing to the oracle is what no reading of an earlier tube tells of this one.
	add(`under .5 over .25 risk ${risk}`, { session }, { ...low, risk }, [60], 600);
	// What counts is how far past: the same bends, counted above half a degree over.
	add(`  risk ${risk}, above +.5`, ours, { ...low, risk, counted: 0.5 }, [0, 3], 4000);
}
const hasty = { ...even(0.5, { ...USUAL_SHOP, operator: { ...USUAL_SHOP.operator, stopping: 0.3 } }), angles: hats };
add('stop .3, 14 31 17', { session }, hasty, [0], 4000);
// As near to its limits as this comes, chance should not decide.
add('stop .3, 14 31 17', ours, hasty, [3], 12_000);
add('stop .3, 14 31 17', { session }, hasty, [10], 1500);
for (const [name, world] of Object.entries(FOREIGN)) {
	const marked = MARKED.includes(name);
	add(name, marked ? ours : { session }, even(0.5, world), [3], marked ? 3000 : 1500);
}
const careless = { ...USUAL_SHOP, blunders: { off: 0.06, swapped: 0.03 } };
add('blunders x3', ours, even(0.5, careless), [3], 6000);

type Hands = Partial<World['operator']>;
const by = (hands: Hands, world: World = USUAL_SHOP): World => ({
	...world,
	operator: { ...world.operator, ...hands },
});
add('pointer not read', ours, even(0.5, by({ pointer: 'leaves' })), [3], 3000);
for (const [name, hands] of Object.entries<Hands>({
	'release not read': { readsRelease: false },
	'pointer set as told': { pointer: 'sets' },
	'pointer set, nothing told': { pointer: 'setsSilent' },
	'neither read': { pointer: 'leaves', readsRelease: false },
})) {
	add(name, { session }, even(0.5, by(hands)), [0, 3], 1000);
}

const shops = Object.entries({ usual: USUAL_SHOP, ...ELSEWHERE });
const three = (world: World): Trial => ({ ...even(0.5, world), angles: { bends: 3, low: 15, high: 120 } });
for (const [name, world] of shops) add(`three cold, ${name}`, { session }, three(world), [0, 1, 3], 4000);
// Each bend far larger than the one before, where the dial lags by nothing or less: what the first taught must carry over.
const growing = (world: World): Trial => ({ ...even(0.5, world), angles: [25, 60, 110] });
for (const [name, world] of shops) {
	add(`three growing, ${name}`, { session }, growing(world), [0], 2000);
	const ahead = { ...world, machine: { ...world.machine, lagShare: null, lag: [-1, 0] as const } };
	add(`growing, lag -1 to 0, ${name}`, { session }, growing(ahead), [0], 2000, 'stated');
}
for (const [name, world] of shops) {
	const set = by({ pointer: 'sets', readsRelease: false }, world);
	add(`set, no release, ${name}`, { session }, three(set), [0, 1, 3], 2500, name === 'usual' ? 'learner' : undefined);
}

const small = (world: World): Trial => ({ ...even(0.5, world), angles: [5, 5, 5] });
add('small 5 degrees', { session }, small(USUAL_SHOP), [0, 1, 3], 7000, 'learner');
// A first tube's bound: an oracle that is told lag, onset, every error's size and how machines differ, but not which this one is.
const { machine } = USUAL_SHOP;
const oneMachine: World = {
	...USUAL_SHOP,
	machine: { ...machine, takeUp: { mean: 3, sd: 0 }, proportion: [0.07, 0.07] },
	// What sets machines and tubes apart together; the part that springs back as 2 to 12 in 100 spread about their middle.
	tube: { takeUp: Math.hypot(0.6, USUAL_SHOP.tube.takeUp), proportion: 0.42 },
};
for (const risk of [0.02, 0.03]) {
	const trial = { ...small(oneMachine), risk };
	add(`small, machines told, risk ${risk}`, { session, 'told most': tubeOracle }, trial, [0], 7000, 'first');
}
add('small, moment, elsewhere', { session }, small(ELSEWHERE.moment!), [0, 1, 3], 2000);
add('small, rough', { session }, small(ROUGH), [0, 1, 3], 2000);
for (const division of [0.1, 0.25, 0.5]) {
	const world = { ...USUAL_SHOP, dial: { ...USUAL_SHOP.dial, division } };
	add(`narrow .25 step ${division}`, ours, even(0.25, world), [0, 3], 1600);
}
add('rough', { session }, three(ROUGH), [0, 1, 3], 3500, 'learner');
// What a first tube there lacks: asked for the risk at which as many end within their band as the program's do.
const asked = { ...three(ROUGH), risk: 0.05 };
add(
	'rough, risk .05',
	{ 'hands told': told({ machine: false }), 'all told': told({ machine: true }) },
	asked,
	[0],
	3500,
);
add('stated risk, usual', { session }, three(USUAL_SHOP), [3, 6], 12_000, 'stated');
for (const [name, world] of Object.entries(ELSEWHERE)) {
	add(`stated risk, ${name}`, { session }, three(world), [3, 6], 800, 'stated');
}

export const CASES: readonly Case[] = cases;
