/** What every set-up and pull was asked for, and what was done: as the log has it, those taken back too. */
import { type TubeTurn, tubeTurn } from '../../tube/turns.ts';
import type { AskedPull, AskedSet } from '../log/asked.ts';
import { readingsIn } from '../log/events.ts';
import type { Entry, State } from '../log/state.ts';
import type { SetAsk } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';

/** One putting of the tube into the die. `made`: where the mark and the plane really were, as told or as set; null where it was taken back. */
export interface SetUpView {
	/** The line of the log that has it. */
	entry: number;
	seat: number;
	mark: { asked: SetAsk['mark'] | null; made: { fromStart: number } | null };
	rotation: { asked: number | null; made: number | null };
	turn: { asked: TubeTurn | null; made: TubeTurn | null };
	void: boolean;
}

export interface PullView {
	/** The line of the log that has it. */
	entry: number;
	seat: number;
	/** As they were asked for at its set-up; null, as `reason`, in a log that does not have them. */
	mark: SetAsk['mark'] | null;
	turn: TubeTurn | null;
	pointer: number | null;
	stop: number;
	/** Why the pull was to stop there. */
	reason: readonly Reason[] | null;
	loaded: number;
	released: number | null;
	measured: number[];
	/** Before which of `measured`, counted from 0, the bend was opened; absent when it was not. */
	opened?: readonly number[];
	void: boolean;
}

/** Where the tube was last asked to lie at the bend at work, of what was not taken back; null in a log that does not have it, and before its first set-up. */
export function placedAt(state: State): Placed | null {
	const asked = setUps(state, state.bend).findLast(({ entry }) => !entry.void)?.asked ?? null;
	if (asked === null) return null;
	const { bend, seat, mark, turn } = asked;
	return { bend, seat, mark, tubeTurn: turn };
}

/** A tube in the die: which mark it lies at, and how it was turned for that. */
export type Placed = Pick<SetAsk, 'bend' | 'seat' | 'mark' | 'tubeTurn'>;

interface SetUp {
	entry: Entry;
	seat: number;
	asked: AskedSet | null;
}

/** Every set-up of a bend in the order made. */
export function setUpsOf(state: State, bend: number): SetUpView[] {
	const { mark, rotation } = state.bends[bend - 1] ?? { mark: null, rotation: null };
	return setUps(state, bend).map(({ entry, seat, asked }) => {
		const stands = !entry.void && mark !== null && rotation !== null;
		return {
			entry: entry.entry,
			seat,
			mark: { asked: asked?.mark ?? null, made: stands ? { fromStart: mark } : null },
			rotation: { asked: asked?.rotation ?? null, made: stands ? rotation : null },
			turn: { asked: asked?.turn ?? null, made: stands ? turnMade(seat, rotation, bend) : null },
			void: entry.void,
		};
	});
}

/** From the second set-up on the tube is put back as it lay. */
function turnMade(seat: number, rotation: number, bend: number): TubeTurn {
	return seat > 1 ? { degrees: 0, way: 'none' } : tubeTurn(rotation, bend);
}

function setUps(state: State, bend: number): SetUp[] {
	return state.entries.flatMap((entry) => {
		if (!entry.events.some((event) => event.type === 'tube-set' && event.bend === bend)) return [];
		const asked = entry.asked?.ask === 'set' ? entry.asked : null;
		return [{ entry, seat: asked?.seat ?? seatsBy(state, entry, bend) + 1, asked }];
	});
}

/** Every pull of a bend in the order made, those taken back too: the tube was pulled, only the number went. */
export function pullsOf(state: State, bend: number): PullView[] {
	const sets = setUps(state, bend);
	const standing = (state.bends[bend - 1]?.pulls ?? []).map((pull) => ({
		...pull,
		measured: [...pull.measured],
		void: false,
	}));
	const undone = state.entries.filter((entry) => entry.void).flatMap((entry) => voidPull(state, entry, bend));
	return [...standing, ...undone]
		.sort((a, b) => a.entry - b.entry)
		.map(({ seat, ...pull }) => {
			const { entry } = pull;
			const set = sets.findLast((each) => each.seat === seat && each.entry.entry <= entry)?.asked;
			const reason = pullAsked(state, bend, entry)?.reason ?? null;
			return { seat, mark: set?.mark ?? null, turn: set?.turn ?? null, ...pull, reason };
		});
}

/** What a pull was asked for; a number that was asked once more is of the record after. */
function pullAsked({ entries }: State, bend: number, entry: number): AskedPull | null {
	const found = entries.findLast(
		({ entry: number, asked }) => number <= entry && asked?.ask === 'pull' && asked.bend === bend,
	);
	return found?.asked?.ask === 'pull' ? found.asked : null;
}

type VoidPull = Omit<PullView, 'mark' | 'turn' | 'reason'>;

function voidPull(state: State, entry: Entry, bend: number): VoidPull[] {
	const readings = readingsIn(entry.events);
	const loaded = readings.find((reading) => reading.of === 'loaded' && reading.bend === bend);
	if (!loaded) return [];
	return [
		{
			entry: entry.entry,
			seat: seatsBy(state, entry, bend),
			pointer: null,
			stop: loaded.stop ?? loaded.value,
			loaded: loaded.value,
			released: readings.find((reading) => reading.of === 'released')?.value ?? null,
			measured: [],
			void: true,
		},
	];
}

/** How often the tube had been set at the bend and not taken back by the time an entry was written. */
function seatsBy(state: State, entry: Entry, bend: number): number {
	const before = state.entries.filter((e) => e.entry < entry.entry);
	const undone = new Set(
		before.flatMap((e) => e.events.flatMap((event) => (event.type === 'record-voided' ? [event.entry] : []))),
	);
	const sets = before.filter((e) => e.events.some((event) => event.type === 'tube-set' && event.bend === bend));
	return sets.filter((e) => !undone.has(e.entry)).length;
}
