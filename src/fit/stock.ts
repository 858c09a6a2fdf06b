import { radians } from '../tube/angles.ts';
import { rawArc } from '../tube/arcs.ts';
import type { Shape } from '../tube/shape.ts';
import type { Chain } from './kinematics.ts';

/** What there is to bend from. */
export interface Stock {
	/** Raw tube from where the finished tube starts to the piece's far end. */
	length: number;
	/** Part by which each bend's arc comes out longer than the straight tube it took. */
	stretch: readonly number[];
}

/** What of the piece is left for the last straight; below 0 where the bends before it take more than there is. */
export function leftOf({ straights, angles, radii }: Omit<Chain, 'rotations'>, { length, stretch }: Stock): number {
	let left = length;
	for (let k = 0; k < angles.length; k++) left -= straights[k]! + rawArc(angles[k]!, radii[k]!, stretch[k]!);
	return left;
}

/** The same of a shape. */
export function leftOfShape({ straights, bends }: Shape, stock: Stock): number {
	const [angles, radii] = [bends.map(({ angle }) => angle), bends.map(({ radius }) => radius)];
	return leftOf({ straights, angles, radii }, stock);
}

/** How much of the last straight goes for one unit more of a value: of a length, or of a degree of a bend at this radius and stretch. */
export function stockTakenBy(kind: 'straight' | 'angle' | 'rotation', radius: number, stretch: number): number {
	if (kind === 'rotation') return 0;
	return kind === 'straight' ? 1 : (radians(1) * radius) / (1 + stretch);
}
