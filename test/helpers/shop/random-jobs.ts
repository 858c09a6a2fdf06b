import type { Draw } from '../../../src/practice/random.ts';
import type { Check, Job } from '../../../src/tube/job.ts';
import { byBends, plainJob } from './plain-job.ts';

const whole = (draw: Draw, from: number, to: number): number => from + Math.floor(draw.uniform(0, to - from + 1));

/** A tube in inches of straights of 6 to 16 and angles of 12 to 100 degrees, in the plane or not, with none to three checks. */
export function randomJob(draw: Draw, bends: number, flat: boolean): Job {
	const turn = () => (flat ? (draw.uniform(0, 1) < 0.5 ? 0 : 180) : draw.uniform(-180, 180));
	const list = Array.from(
		{ length: bends },
		(_, i) => [draw.uniform(6, 16), draw.uniform(12, 100), i === 0 ? 0 : turn()] as const,
	);
	const last = draw.uniform(6, 16);
	const checks = Array.from({ length: whole(draw, 0, 3) }, (_, i) => randomCheck(draw, bends, `check ${i + 1}`));
	return plainJob({
		tooling: { growth: 1, clamp: 2, follow: 2, tape: 1 / 16 },
		trim: { start: 2, end: 2 },
		shape: byBends(list, last),
		checks,
		tube: { ...plainJob().tube, stock: null },
	});
}

function randomCheck(draw: Draw, bends: number, name: string): Check {
	const from = whole(draw, 1, bends);
	const to = whole(draw, from + 1, bends + 1);
	const kind = whole(draw, 0, 2);
	if (kind === 0) return { name, kind: 'drop', from, to: { straight: to }, surface: 'centre', tolerance: 1 / 16 };
	if (kind === 1) return { name, kind: 'angle', between: [from, to], tolerance: 0.5 };
	return {
		name,
		kind: 'span',
		from: { bend: from },
		to: to > bends ? { end: 'far' } : { bend: to },
		tolerance: 1 / 16,
	};
}
