import { halfTangent } from '../tube/angles.ts';
import { setback } from '../tube/arcs.ts';
import type { Point } from '../tube/job.ts';
import { ARC_NUMBERS, type Chain, carried, DEGREE, type Walk } from './kinematics.ts';

/** The sharp corners of the bends from `first` on, counted from 0. */
export function cornersOf({ angles, radii }: Chain, { axes }: Walk, first: number): Point[] {
	return angles.slice(first).map((angle, row): Point => {
		const at = ARC_NUMBERS * (first + row);
		const ahead = setback(angle, radii[first + row]!);
		return [
			axes[at + 3]! + ahead * axes[at]!,
			axes[at + 4]! + ahead * axes[at + 1]!,
			axes[at + 5]! + ahead * axes[at + 2]!,
		];
	});
}

/** How one corner goes with each straight, angle and rotation: three numbers each, per unit of length or degree. */
export interface CornerMoves {
	straights: Float64Array;
	angles: Float64Array;
	rotations: Float64Array;
}

/**
 * The exact derivatives of those corners. A corner is carried by every bend before it as the far end is; its own bend moves it along the
 * straight that leads to it, by R/2 sec^2(angle/2) a radian, the setback being R tan(angle/2).
 */
export function cornerMoves(chain: Chain, way: Walk, first: number): CornerMoves[] {
	const { along, axes } = way;
	const bends = chain.angles.length;
	return cornersOf(chain, way, first).map((corner, row) => {
		const own = first + row;
		const moves = {
			straights: new Float64Array(3 * (bends + 1)),
			angles: new Float64Array(3 * bends),
			rotations: new Float64Array(3 * bends),
		};
		for (let k = 0; k < 3 * (own + 1); k++) moves.straights[k] = along[k]!;
		for (let k = 0; k < own; k++) {
			carried(axes, ARC_NUMBERS * k, corner, moves.rotations, 3 * k);
			carried(axes, ARC_NUMBERS * k + 6, corner, moves.angles, 3 * k);
		}
		const further = (DEGREE * chain.radii[own]! * (1 + halfTangent(chain.angles[own]!) ** 2)) / 2;
		for (let i = 0; i < 3; i++) moves.angles[3 * own + i] = further * axes[ARC_NUMBERS * own + i]!;
		return moves;
	});
}
