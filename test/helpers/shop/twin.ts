import type { Check, Job } from '../../../src/tube/job.ts';

/** Millimeters in an inch, exactly (international inch of 1959; NIST SP 811, appendix B.8). */
export const INCH = 25.4;

/** The same tube in millimeters: every length 25.4 times as many, no angle and no ratio another. */
export function inMillimeters(job: Job): Job {
	const { tube, tooling, shape, trim, tolerance } = job;
	const mm = (inches: number) => inches * INCH;
	const maybe = (inches: number | null) => (inches === null ? null : mm(inches));
	return {
		...job,
		units: 'mm',
		tube: { ...tube, od: mm(tube.od), wall: mm(tube.wall), stock: maybe(tube.stock) },
		tooling: {
			...tooling,
			clr: mm(tooling.clr),
			clamp: mm(tooling.clamp),
			follow: mm(tooling.follow),
			markOffset: mm(tooling.markOffset),
			tape: mm(tooling.tape),
			floor: maybe(tooling.floor),
		},
		shape:
			shape.kind === 'bends'
				? {
						...shape,
						bends: shape.bends.map((bend) => ({ ...bend, straight: mm(bend.straight) })),
						last: mm(shape.last),
					}
				: { ...shape, points: shape.points.map(([x, y, z]) => [mm(x), mm(y), mm(z)] as const) },
		trim: { start: mm(trim.start), end: mm(trim.end) },
		tolerance: { ...tolerance, length: mm(tolerance.length), shape: mm(tolerance.shape) },
		checks: job.checks.map(
			(check): Check => (isLength(check.kind) ? { ...check, tolerance: mm(check.tolerance) } : check),
		),
	};
}

export const isLength = (kind: Check['kind']): boolean => kind !== 'angle' && kind !== 'ovality';
