import type { Material } from '../tube/job.ts';

/**
 * Springback of a fully plastic round tube by mechanics alone: the part `k` of the bend angle that opens on release, and the
 * `growth` of the center-line radius, 1/(1 - k), since the arc keeps the length it was wrapped with.
 * k = M R / (E I), M = yield (D^3 - d^3)/6 (fully plastic moment), I = pi (D^4 - d^4)/64. Elastic unloading: any text on
 * strength of materials. Lengths in one unit, yield and modulus in one unit; both cancel.
 */
export function mechanicsPrior(
	tube: { od: number; wall: number },
	clr: number,
	material: Material,
): { k: number; growth: number } {
	const outer = tube.od;
	const inner = tube.od - 2 * tube.wall;
	const plasticModulus = (outer ** 3 - inner ** 3) / 6;
	const secondMoment = (Math.PI * (outer ** 4 - inner ** 4)) / 64;
	const k = (material.yield * plasticModulus * clr) / (material.modulus * secondMoment);
	return { k, growth: 1 / (1 - k) };
}
