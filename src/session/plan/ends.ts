import { farEndMotion } from '../../fit/kinematics.ts';
import { scales } from '../../fit/scales.ts';
import { residualOf } from '../../maths/bounded-ridge.ts';
import { slopesAt } from '../../maths/differences.ts';
import { radians } from '../../tube/angles.ts';
import { bentAsOf } from '../../tube/bent-as.ts';
import { checkIn } from '../../tube/checks.ts';
import { toolingOf } from '../../tube/dies.ts';
import { frames } from '../../tube/frames.ts';
import { fromFar } from '../../tube/from-far.ts';
import type { PlannedGrowth } from '../../tube/growth.ts';
import type { EndName, Job } from '../../tube/job.ts';
import type { EndChoice, Ends } from '../../tube/layout.ts';
import { finishedShape } from '../../tube/resolve.ts';
import type { Shape } from '../../tube/shape.ts';
import { hindrances } from '../../tube/warnings.ts';

/** Changes cost next to nothing here: what matters is what they can reach. */
const CHEAP = 64;

/** What the last leg's direction may be off by here, in degrees; its place may be off by the job's tolerance of a length. */
const MOST_ASKEW = 0.25;

/** Ends whose misses differ by no more than this part are as good as each other. */
const ALIKE = 0.05;

/**
 * Both ends of the drawing to begin at: what stands in the way there, and what the bends still to come could not take back of errors as
 * large as the tolerances allow. Bends are always made in order from the end chosen.
 */
export function jobEnds(job: Job, growth: PlannedGrowth): Ends {
	const here = bentAsOf(job).from;
	const other: EndName = here === 'start' ? 'far' : 'start';
	const of = { [here]: endChoice(job, growth), [other]: endChoice(fromFar(job), growth) } as Record<EndName, EndChoice>;
	return { ...of, better: better(of) };
}

function better({ start, far }: Record<EndName, EndChoice>): EndName | null {
	if (start.possible !== far.possible) return start.possible ? 'start' : 'far';
	if (Math.abs(start.left - far.left) <= ALIKE * Math.max(start.left, far.left)) return null;
	return start.left < far.left ? 'start' : 'far';
}

function endChoice(job: Job, growth: PlannedGrowth): EndChoice {
	const design = finishedShape(job, growth);
	const found = hindrances(job, design);
	const left = uncorrected(job, design, finishedShape(fromFar(job), growth));
	return { possible: found.length === 0, hindrances: found, left };
}

/** By how much a check is moved to see how it follows, in degrees and lengths of the job's unit. */
const CHECK_MOVED = 1e-3;

type ShapeNumber = 'straight' | 'angle' | 'rotation';

/**
 * How the tube moves with one value of its shape, in units of the tolerances: the far end's place as seen from the first straight (3), the
 * start end's as seen from the last (3), the angle between the two (3), the checks. Neither end is taken for the better one.
 */
interface Column {
	kind: ShapeNumber;
	index: number;
	/** Per unit of length or degree. */
	moves: number[];
	/** The same per unit of what a change costs, and between which of those it may still be changed. */
	lever: number[];
	range: readonly [number, number];
}

/**
 * What remains at the far end when every bend comes out wrong by its tolerances, each corrected by the bends after it: the root of the
 * mean squares summed over the bends, in units of the tolerances (places, direction and checks). Errors are small beside the tube, so that all moves in proportion.
 */
function uncorrected(job: Job, design: Shape, turned: Shape): number {
	const columns = changeColumns(job, design, turned);
	const { under, over, rotation } = job.tolerance;
	const errors: Record<ShapeNumber, number[]> = {
		angle: [-under, over],
		rotation: [-rotation, rotation],
		straight: [],
	};
	let left = 0;
	for (const { kind, index, moves } of columns) {
		// The first bend's rotation sets its plane and no more.
		if (kind === 'rotation' && index === 0) continue;
		const free = columns.filter((column) => column.index > index);
		const levers = {
			columns: free.map(({ lever }) => lever),
			lower: free.map(({ range }) => range[0]),
			upper: free.map(({ range }) => range[1]),
		};
		for (const error of errors[kind]) {
			const misses = residualOf(
				moves.map((move) => move * error),
				levers,
			);
			// Either way about is as likely.
			left += sumOfSquares(misses) / 2;
		}
	}
	return Math.sqrt(left);
}

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

/** By how much a value may still be changed: a straight not under what the clamp needs, unless the drawing has it so. */
function roomToChange(
	job: Job,
	{ straights, bends }: Shape,
	{ kind, index }: Pick<Column, 'kind' | 'index'>,
): [number, number] {
	if (kind === 'rotation') return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
	if (kind === 'angle') return [Math.min(0, 1 - bends[index]!.angle), 179 - Math.min(179, bends[index]!.angle)];
	const { clamp, markOffset } = toolingOf(job, index + 1);
	const least = index === bends.length ? 0 : clamp + markOffset;
	return [Math.min(0, least - straights[index]!), Number.POSITIVE_INFINITY];
}

function changeColumns(job: Job, design: Shape, turned: Shape): Column[] {
	const motion = farEndMotion(design);
	const back = farEndMotion(turned);
	const bends = design.bends.length;
	const turn = radians(MOST_ASKEW);
	const checks = job.checks.filter((check) => check.kind !== 'ovality');
	const column = (kind: ShapeNumber, index: number): Column => {
		const { end, direction } = motion[`${kind}s`][index]!;
		const seenBack =
			back[`${kind}s`][{ straight: bends - index, angle: bends - 1 - index, rotation: bends - index }[kind]];
		const slopes = slopesAt(
			([by]) => {
				const laid = frames(shapeChangedBy(design, kind, index, by!));
				return checks.map((check) => checkIn(check, laid, job.tube));
			},
			[0],
			[CHECK_MOVED],
		);
		const moves = [
			...[...end, ...(seenBack?.end ?? [0, 0, 0])].map((d) => d / job.tolerance.length / Math.SQRT2),
			...direction.map((d) => d / turn),
			...checks.map((check, row) => slopes[row]![0]! / check.tolerance),
		];
		const cost = CHEAP * scales(job.units).dear[kind];
		const [low, high] = roomToChange(job, design, { kind, index });
		return { kind, index, moves, lever: moves.map((move) => move * cost), range: [low / cost, high / cost] };
	};
	return [
		...design.straights.map((_, i) => column('straight', i)),
		...design.bends.flatMap((_, i) => [column('angle', i), column('rotation', i)]),
	];
}

function shapeChangedBy(shape: Shape, kind: ShapeNumber, index: number, by: number): Shape {
	if (kind === 'straight') return { ...shape, straights: shape.straights.map((s, i) => (i === index ? s + by : s)) };
	return { ...shape, bends: shape.bends.map((b, i) => (i === index ? { ...b, [kind]: b[kind] + by } : b)) };
}
