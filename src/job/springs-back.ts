import { mechanicsPrior } from '../springback/mechanics.ts';
import type { Material } from '../tube/job.ts';
import { trimmed } from '../units/format.ts';
import { type Report, show } from './fault.ts';

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
	const most = trimmed(Math.floor(((clr * MOST) / k) * 100) / 100, 2);
	const right = `a radius of at most ${most}: at a larger one this tube of this material springs back by more than half`;
	report({ at, found: show(clr), right });
}
