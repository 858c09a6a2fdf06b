import { estimateAsBuilt, marginal, rawTubeOf } from '../../fit/as-built.ts';
import type { AsBuilt, AsBuiltInput, ToldBend, ToldTooling, TubeReading } from '../../fit/built-tube.ts';
import { gripsOf, legGrips } from '../../fit/grips.ts';
import type { RawDie } from '../../fit/raw-tube.ts';
import { at } from '../../maths/list.ts';
import { made } from '../../springback/filter.ts';
import { checkIn } from '../../tube/checks.ts';
import { dieNumbers } from '../../tube/dies.ts';
import { frames } from '../../tube/frames.ts';
import type { BendState, State } from '../log/state.ts';
import { madeCount } from '../log/state.ts';
import { dieSpreads } from './die-spread.ts';
import { checkReadingSd, LEG_SD, markSd, READ_BACK_SD, tapedSd, turnSd, type WhoseHands } from './hands.ts';
import { diesAsPlanned, firstRotation } from './tube-at-work.ts';

/** Log-normal spread of the finished radius of one bend against the next. */
export const BEND_SPREAD = 0.005;
/** How far the stretch of an arc strays from 0, where nobody has measured it, and from a test piece's (common practice, no source). */
const STRETCH_SD = { unmeasured: 0.0045, measured: 0.0025 };
/** Where the plane of bend 1 lies is a matter of how the tube is laid, not of chance. */
const LAID_SD = 1e-6;

/** How many bends the tube as it lies on the bench has: those made, and the one at work once it was pulled. */
function bentCount(state: State): number {
	const count = madeCount(state);
	return count === state.bend - 1 && at(state.bends, count).pulls.length > 0 ? count + 1 : count;
}

/**
 * All bends of the tube as it lies on the bench as one estimate, from what pulls, dial and finder told of each angle, marks and
 * rotations as set, and every reading on the tube that still holds.
 */
export function builtNow(state: State): AsBuilt {
	return rememberedAsBuilt(state.start, inputOf(state, false));
}

/**
 * The same by every reading alike: none is taken to stand since it was read twice, and none is left out since others spoke against it. So what
 * goes against what is seen as it was told.
 */
export const builtByAll = (state: State): AsBuilt => rememberedAsBuilt(state.start, unconfirmed(inputOf(state, true)));

/** The same by those alone that count; which of them stand is told by its input. */
export function builtByCounted(state: State): AsBuilt {
	const input = inputOf(state, false);
	return { ...rememberedAsBuilt(state.start, unconfirmed(input)), input };
}

const unconfirmed = (input: AsBuiltInput): AsBuiltInput => ({
	...input,
	readings: input.readings.map((each) => ({ ...each, confirmed: false })),
});

function inputOf(state: State, all: boolean): AsBuiltInput {
	const { piece } = state;
	const { job } = state.start;
	const bends = state.bends.slice(0, bentCount(state));
	const on = dieNumbers(job, bends.length);
	const spreads = dieSpreads(state.start);
	const [tooling, ...further] = diesAsPlanned(state.start).map((die, i) => toldTooling(die, at(spreads, i)));
	const several = further.length > 0;
	return {
		bends: bends.map((bend, i) => ({
			...toldBend(state, state.start, bend, i),
			...(several ? { die: at(on, i) } : {}),
		})),
		tooling: tooling!,
		...(several ? { further } : {}),
		piece,
		readings: [...legReadings(bends, job.tooling.tape), ...checkReadings(state, bends.length, all)],
	};
}

const toldTooling = ({ radius, stretch, markOffset }: RawDie, dieSpread: number): ToldTooling => ({
	radius,
	dieSpread,
	bendSpread: BEND_SPREAD,
	stretch: { value: stretch, sd: STRETCH_SD[stretch === 0 ? 'unmeasured' : 'measured'] },
	markOffset,
});

/** One answer asks for the same estimate up to five times, of states that differ in other things, and for up to a dozen; these are the last ones of a session. */
const KNOWN = new WeakMap<State['start'], Map<string, AsBuilt>>();
const MOST_KNOWN = 16;

/** What a reading measures follows from its name and the session's start, so that all else of the input tells it apart. */
function rememberedAsBuilt(start: State['start'], input: AsBuiltInput): AsBuilt {
	const known = KNOWN.get(start) ?? new Map<string, AsBuilt>();
	KNOWN.set(start, known);
	const key = JSON.stringify(input);
	const stands = input.readings.some(({ confirmed }) => confirmed);
	const built =
		known.get(key) ?? estimateAsBuilt(input, stands ? rememberedAsBuilt(start, unconfirmed(input)) : undefined);
	known.delete(key);
	known.set(key, built);
	for (const oldest of known.keys()) if (known.size > MOST_KNOWN) known.delete(oldest);
	return built;
}

function toldBend(state: State, shop: WhoseHands, bend: BendState, i: number): ToldBend {
	const planned = at(state.plan.current, i);
	const told = bend.told ?? bend.made ?? made(state.filter);
	const mark = { value: bend.mark ?? planned.fromStart, sd: bend.taped ? tapedSd(shop) : markSd(shop) };
	const rotation = { value: bend.rotation ?? planned.rotation, sd: bend.readBack ? READ_BACK_SD : turnSd(shop) };
	const rougher = shop.times === undefined ? 1 : shop.times / bend.toldAt;
	return {
		// A leg that was measured says where the bend lies; the mark was then asked for, but is not known.
		mark: bend.leg === null ? mark : null,
		angle: { value: told.angle, sd: rougher * told.sd },
		rotation: i === 0 ? { value: firstRotation(state.design), sd: LAID_SD } : rotation,
		relievedFrom: bend.relievedFrom,
	};
}

function legReadings(bends: readonly BendState[], tape: number): TubeReading[] {
	return bends.flatMap(({ leg }, i): TubeReading[] =>
		leg === null
			? []
			: [
					{
						name: `leg-${i + 1}`,
						value: leg,
						sd: LEG_SD * tape,
						of: (uncut) => at(uncut.straights, i),
						grips: (laid) => legGrips(i + 1, laid),
						confirmed: true,
					},
				],
	);
}

/** The checks taken that the bends so far suffice for; `all`: those too that were set aside. */
function checkReadings({ start, design, checks }: State, bends: number, all: boolean): TubeReading[] {
	return design.checks.flatMap(({ check, after }): TubeReading[] => {
		const taken = checks[check.name];
		const { reading = null, count: counts = 1, confirmed = false, contradicted = false } = taken ?? {};
		const count = all && contradicted ? 1 : counts;
		if (reading === null || count === 0 || after > bends || check.kind === 'ovality') return [];
		const sd = checkReadingSd(start, check) / Math.sqrt(count);
		const of: TubeReading['of'] = (uncut, laid = frames(uncut)) => checkIn(check, laid, start.job.tube);
		const grips: TubeReading['grips'] = (laid) => gripsOf(check, laid, start.job.tube);
		return [{ name: check.name, value: reading, sd, of, grips, confirmed, check: true }];
	});
}

/** What an estimate of the tube rests on, as it counts where these hands told and read it. */
export function inputBy(state: State, { input }: AsBuilt, shop: WhoseHands): AsBuiltInput {
	const rougher = ({ name, check: isCheck }: TubeReading): number => {
		const read = state.design.checks.find(({ check }) => isCheck && check.name === name);
		return read ? checkReadingSd(shop, read.check) / checkReadingSd(state.start, read.check) : 1;
	};
	return {
		...input,
		bends: input.bends.map((bend, i) => ({ ...bend, ...toldBend(state, shop, at(state.bends, i), i) })),
		readings: input.readings.map((reading) => ({ ...reading, sd: rougher(reading) * reading.sd })),
	};
}

/** The state with its made bends as all readings together have them. */
export function estimated(state: State): State & { built: AsBuilt } {
	const built = builtNow(state);
	const { bends: lie } = rawTubeOf(built);
	const bends = state.bends.map((bend, i): BendState => {
		const raw = lie[i];
		if (!raw || bend.made === null) return bend;
		const { value, sd } = marginal(built, 'angle', i);
		const { mark, rotation, radius } = raw;
		return { ...bend, made: { angle: value, sd }, lies: { mark, rotation, radius } };
	});
	return { ...state, bends, built };
}
