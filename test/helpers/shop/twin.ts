import type { Check, DieFields, EndName, Job } from '../../../src/tube/job.ts';

/** Millimeters in an inch, exactly (international inch of 1959; NIST SP 811, appendix B.8). */
export const INCH = 25.4;

const mm = (inches: number) => inches * INCH;
const maybe = (inches: number | null) => (inches === null ? null : mm(inches));

const LENGTHS_OF_A_DIE = ['clr', 'clamp', 'follow', 'markOffset', 'floor'] as const;

/** Of a die only what it has itself. */
function dieInMillimeters<T extends Partial<DieFields>>(die: T): T {
	const lengths = LENGTHS_OF_A_DIE.filter((name) => die[name] !== undefined);
	return { ...die, ...Object.fromEntries(lengths.map((name) => [name, maybe(die[name]!)])) };
}

function endInMillimeters(end: EndName, ends: NonNullable<Job['ends']>): Job['ends'] {
	const cope = ends[end]?.cope;
	return cope && { [end]: { cope: { ...cope, od: mm(cope.od), offset: mm(cope.offset) } } };
}

/** The same tube in millimeters: every length 25.4 times as many, no angle and no ratio another. */
export function inMillimeters(job: Job): Job {
	const { tube, tooling, shape, trim, tolerance, ends } = job;
	return {
		...job,
		units: 'mm',
		tube: { ...tube, od: mm(tube.od), wall: mm(tube.wall), stock: maybe(tube.stock) },
		tooling: {
			...tooling,
			...dieInMillimeters(tooling),
			tape: mm(tooling.tape),
			...(tooling.dies && {
				dies: Object.fromEntries(Object.entries(tooling.dies).map(([name, die]) => [name, dieInMillimeters(die)])),
			}),
		},
		shape:
			shape.kind === 'bends'
				? {
						...shape,
						...(shape.radius !== undefined && { radius: mm(shape.radius) }),
						bends: shape.bends.map((bend) => ({ ...bend, straight: mm(bend.straight) })),
						last: mm(shape.last),
					}
				: { ...shape, points: shape.points.map(([x, y, z]) => [mm(x), mm(y), mm(z)] as const) },
		trim: { start: mm(trim.start), end: mm(trim.end) },
		tolerance: { ...tolerance, length: mm(tolerance.length), shape: mm(tolerance.shape) },
		...(ends && { ends: { ...endInMillimeters('start', ends), ...endInMillimeters('far', ends) } }),
		checks: job.checks.map(
			(check): Check => (isLength(check.kind) ? { ...check, tolerance: mm(check.tolerance) } : check),
		),
	};
}

export const isLength = (kind: Check['kind']): boolean => kind !== 'angle' && kind !== 'ovality';
