import { roundedTo } from '../maths/scalar.ts';
import type { Draw } from './random.ts';
import type { World } from './world.ts';

/** A number as it is keyed: now and then 2 degrees wrong, or with two digits changed over. */
export function keyed(read: number, { blunders }: World, draw: Draw): number {
	if (draw.happens(blunders.off)) return read + (draw.happens(0.5) ? 2 : -2);
	return draw.happens(blunders.swapped / (1 - blunders.off)) ? swapped(read) : read;
}

/** The last two whole digits changed over: 31 for 13, 105 for 150. */
function swapped(value: number): number {
	const whole = Math.trunc(Math.abs(value));
	const [tens, ones] = [Math.trunc(whole / 10) % 10, whole % 10];
	const sign = value < 0 ? -1 : 1;
	return roundedTo(value + sign * 9 * (ones - tens), 6);
}
