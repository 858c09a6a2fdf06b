/**
 * How benders, dies, tubes and materials are kin: what one combination of them shows tells something of another, as far as
 * they share what it comes from.
 */
import {
	BUILD_UP,
	BUILD_UP_SD,
	CURVATURE,
	CURVATURE_SD,
	FRAME,
	LAG,
	LAG_PRIOR,
	MECHANICS_SD,
	PROPORTION,
	TAKE_UP,
	TAKE_UP_PRIOR,
} from './model.ts';

/** A combination that springback is learned for. Lengths in mm; `k`: the part that mechanics alone lets spring back. */
export interface Kin {
	bender: string;
	die: string;
	od: number;
	wall: number;
	clr: number;
	material: string;
	k: number;
}

/** The filter's unknowns that belong to machine and material, and that outlive a tube. */
export const MACHINE: readonly number[] = [TAKE_UP, PROPORTION, CURVATURE, LAG, BUILD_UP];

/** What two combinations may have in common; `own` only one has with itself. */
type Level = 'shop' | 'bender' | 'die' | 'material' | 'tube' | 'own';
type Shares = Readonly<Partial<Record<Level, number>>>;

/**
 * Where the spread of each cause of springback lies, as parts of its variance that add up to 1. Judgment, no source: slack,
 * frame and dial are the bender's; a die sits in it with play of its own and another length of lever; how far mechanics is
 * wrong lies in what it leaves out (hardening, thinning), which is much the same for one material, partly for all, partly for
 * one size. A tenth or more is nobody else's, so that no kin ever makes a combination sure.
 */
const SLACK: Shares = { shop: 0.05, bender: 0.65, die: 0.15, tube: 0.05, own: 0.1 };
const DIAL: Shares = { shop: 0.05, bender: 0.75, die: 0.1, own: 0.1 };
const STIFFNESS: Shares = { shop: 0.05, bender: 0.65, die: 0.1, tube: 0.05, own: 0.15 };
const MECHANICS: Shares = { shop: 0.3, material: 0.35, tube: 0.2, own: 0.15 };
const SHAPE: Shares = { shop: 0.1, bender: 0.5, die: 0.1, material: 0.1, tube: 0.05, own: 0.15 };

/**
 * A cause moves the unknowns by its `load` times a number of variance 1 that has nothing to do with the other causes: together
 * they are the cold prior. An error of mechanics counts in proportion to what mechanics gives.
 */
interface KinCause {
	shares: Shares;
	load: readonly number[];
	byMechanics?: true;
}
const KIN_CAUSES: readonly KinCause[] = [
	{ shares: SLACK, load: loads([TAKE_UP, TAKE_UP_PRIOR.sd]) },
	{ shares: SLACK, load: loads([BUILD_UP, BUILD_UP_SD]) },
	{ shares: DIAL, load: loads([LAG, LAG_PRIOR.sd]) },
	{ shares: STIFFNESS, load: loads([PROPORTION, 90 * FRAME.sd]) },
	{ shares: MECHANICS, load: loads([PROPORTION, 90 * MECHANICS_SD]), byMechanics: true },
	{ shares: SHAPE, load: loads([CURVATURE, CURVATURE_SD]) },
];

function loads(...on: (readonly [unknown: number, by: number])[]): number[] {
	return MACHINE.map((unknown) => on.find(([moved]) => moved === unknown)?.[1] ?? 0);
}

/** Hundredths of a millimeter: a tube given in inches and one given in mm are the same. */
function hundredths(length: number): number {
	return Math.round(100 * length);
}

/** Whether two name the same combination; `k` may differ, where a yield strength was corrected. */
export function isSameKin(a: Kin, b: Kin): boolean {
	return sameTube(a, b) && sameDie(a, b);
}

/** Whether two lists name the same combinations, in the same order. */
export function areSameKins(a: readonly Kin[], b: readonly Kin[]): boolean {
	return a.length === b.length && a.every((kin, i) => kin === b[i] || isSameKin(kin, b[i]!));
}

function sameDie(a: Kin, b: Kin): boolean {
	return a.die === b.die && a.bender === b.bender && hundredths(a.clr) === hundredths(b.clr);
}

function sameTube(a: Kin, b: Kin): boolean {
	return (
		a.material === b.material && hundredths(a.od) === hundredths(b.od) && hundredths(a.wall) === hundredths(b.wall)
	);
}

/** What two combinations have in common. */
export function sharedLevels(a: Kin, b: Kin): readonly Level[] {
	const shared: Level[] = ['shop'];
	const [die, tube] = [sameDie(a, b), sameTube(a, b)];
	if (a.bender === b.bender) shared.push('bender');
	if (die) shared.push('die');
	if (a.material === b.material) shared.push('material');
	if (tube) shared.push('tube');
	if (die && tube) shared.push('own');
	return shared;
}

/** Covariance of the machine unknowns of one combination (rows) with those of another (columns), before any reading. */
export function covarianceOf(a: Kin, b: Kin): number[][] {
	const shared = sharedLevels(a, b);
	const cov = MACHINE.map(() => MACHINE.map(() => 0));
	for (const { shares, load, byMechanics } of KIN_CAUSES) {
		let common = 0;
		for (const level of shared) common += shares[level] ?? 0;
		const part = byMechanics ? common * a.k * b.k : common;
		for (let i = 0; i < load.length; i++) {
			if (load[i] === 0) continue;
			for (let j = 0; j < load.length; j++) cov[i]![j]! += part * load[i]! * load[j]!;
		}
	}
	return cov;
}

/** How near two combinations are before any reading: the part of a cause that they share, on average; 1 for the same. */
export function nearness(a: Kin, b: Kin): number {
	let sum = 0;
	for (const level of sharedLevels(a, b)) for (const { shares } of KIN_CAUSES) sum += shares[level] ?? 0;
	return sum / KIN_CAUSES.length;
}
