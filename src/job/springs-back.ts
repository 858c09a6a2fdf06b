import { floorTo } from '../maths/scalar.ts';
import { mechanicsPrior } from '../springback/mechanics.ts';
import type { Material } from '../tube/job.ts';
import { type Report, valued } from './fault.ts';

/** What springs back by more than this part by mechanics alone is hardly bent: no bender is made for it, and no radius follows from it. */
const MOST = 0.5;

/** Each argument undefined where it could not be read: then nothing is said. */
export function reportSpringsBack(
	{ od, wall, material }: { od?: number; wall?: number; material?: Material | undefined },
	clr: number | undefined,
	at: string,
	report: Report,
): void {
	if (od === undefined || wall === undefined || material === undefined || clr === undefined || wall > od / 2) return;
	const { k } = mechanicsPrior({ od, wall }, clr, material);
	if (k < MOST) return;
	const most = floorTo((clr * MOST) / k, 0.01);
	report({ at, found: valued(clr), right: { code: 'radius-at-most', most } });
}
