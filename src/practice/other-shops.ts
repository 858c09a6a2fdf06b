/** Shops that no model of ours was made for. Their constants are common practice, no source. */
import { type Law, USUAL_SHOP, type World } from './world.ts';

const machine = (change: Partial<World['machine']>): World => ({
	...USUAL_SHOP,
	machine: { ...USUAL_SHOP.machine, ...change },
});

/** A dial that lags by its own, whatever the take-up. */
const FREE_LAG = { lagShare: null, lag: [-1, 2] } as const;
const CREEP = [0.02, 0.2] as const;

const SATURATING: Law = { form: 'saturating', over: [50, 200] };
const KINK: Law = { form: 'kink', above: [40, 80], extra: [0.2, 0.8] };
const MOMENT: Law = { form: 'moment', zone: [3, 14], curvature: [25, 70], hardening: [0.002, 0.02] };

export const FOREIGN: Readonly<Record<string, World>> = {
	hardening: machine({ hardening: [0.1, 0.4], curvature: { sd: 0 } }),
	backlash: machine({ backlash: [0.3, 1] }),
	'heavy tails': { ...USUAL_SHOP, tails: 4 },
	drift: machine({ drift: { ...USUAL_SHOP.machine.drift, takeUp: [0.05, 0.15], proportion: [0.005, 0.015] } }),
	'coarse dial': { ...USUAL_SHOP, dial: { ...USUAL_SHOP.dial, division: 1 } },
	'ramp onset': machine({ onset: 'ramp', buildUp: [6, 18] }),
	'late onset': machine({ onset: 'late', buildUp: [6, 16] }),
	'free lag': machine({ lagShare: null, lag: [0.3, 3] }),
	'lag -1 to 2': machine(FREE_LAG),
	'power law': machine({ hardening: [-0.35, 0.35], curvature: { sd: 0 } }),
	saturating: machine({ law: SATURATING, curvature: { sd: 0 } }),
	kink: machine({ law: KINK, curvature: { sd: 0 } }),
	moment: machine({ law: MOMENT, curvature: { sd: 0 } }),
	'wide machines': machine({ takeUp: [1, 5.5], proportion: [0.01, 0.15] }),
	'finder bias': { ...USUAL_SHOP, finder: { ...USUAL_SHOP.finder, bias: [-0.3, 0.3] } },
	creep: machine({ creep: CREEP }),
	'walk in a day': machine({ drift: { ...USUAL_SHOP.machine.drift, walk: 0.1 } }),
};

/** Shops that have next to nothing in common with the springback room's model: another law, a free lag, machines of any kind. */
const foreignMachine = (change: Partial<World['machine']>): World =>
	machine({ ...FREE_LAG, takeUp: [1.5, 5], proportion: [0.02, 0.12], curvature: { sd: 0 }, ...change });

export const ELSEWHERE: Readonly<Record<string, World>> = {
	'power law': foreignMachine({ hardening: [-0.35, 0.35] }),
	saturating: foreignMachine({ law: SATURATING, onset: 'ramp', buildUp: [5, 16] }),
	kink: foreignMachine({ law: KINK, onset: 'late', buildUp: [5, 14] }),
	moment: foreignMachine({ law: MOMENT }),
};

/** A shop where all is worse at once. */
export const ROUGH: World = {
	...machine({ creep: CREEP, drift: { takeUp: [0.05, 0.15], proportion: [0.005, 0.015], walk: 0.05 } }),
	scatter: [1, 2],
	blunders: { off: 0.035, swapped: 0.015 },
};
