/** Where something lies round the tube, and what its ends are called. */
import type { EndName } from '../tube/job.ts';
import { formatAngle } from '../units/format.ts';

export const END_NAMES: Readonly<Record<EndName, string>> = { start: 'start end', far: 'far end' };

/** At the ends of a tube that is drawn. */
export const END_LABELS: Readonly<Record<EndName, string>> = { start: 'START', far: 'FAR' };

/** Degrees round the tube nearer to 0 or 180 than this are on that line. */
const ON_LINE = 0.05;

/** Where on the tube's round, from bend 1's inside. */
export function roundWords(degrees: number): string {
	if (Math.abs(degrees) < ON_LINE) return "on the line of bend 1's inside";
	if (Math.abs(degrees) > 180 - ON_LINE) return "opposite to bend 1's inside";
	const way = degrees > 0 ? 'clockwise' : 'counterclockwise';
	return `${formatAngle(Math.abs(degrees))} ${way} from bend 1's inside, looking to the far end`;
}
