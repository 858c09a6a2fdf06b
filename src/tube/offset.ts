import { degrees, radians } from './angles.ts';
import { setback } from './arcs.ts';

/** Two equal bends the opposite way, that lead a tube to a line beside and parallel to its own. */
export interface Offset {
	/** Of both bends, in degrees. */
	angle: number;
	/** Between the bends, tangent to tangent; below 0 where the radius leaves no room for it. */
	straight: number;
}

/**
 * What leads a tube over by `rise` (square to it, center line to center line) within `run` (along it). `between` says what the run
 * is taken between: the sharp corners, or the places where the first bend begins and the second one ends.
 *
 * With D the distance of the corners and t = tan(angle / 2): rise = D sin(angle); run = D cos(angle) between corners, and 2 R t more
 * between tangents, which gives (4 R - rise) t^2 - 2 run t + rise = 0, its smaller root being the flatter and usual offset.
 * Null where no bends below 180 degrees do it.
 */
export function offsetByRun(rise: number, run: number, radius: number, between: 'corners' | 'tangents'): Offset | null {
	if (!(rise > 0)) return null;
	if (between === 'corners') return offsetByAngle(rise, degrees(Math.atan2(rise, run)), radius);
	const root = run * run - rise * (4 * radius - rise);
	if (!(run > 0) || root < 0) return null;
	return offsetByAngle(rise, 2 * degrees(Math.atan(rise / (run + Math.sqrt(root)))), radius);
}

/** The same for a given angle of both bends. Null for an angle that is not above 0 and below 180. */
export function offsetByAngle(rise: number, angle: number, radius: number): Offset | null {
	if (!(rise > 0 && angle > 0 && angle < 180)) return null;
	return { angle, straight: rise / Math.sin(radians(angle)) - 2 * setback(angle, radius) };
}
