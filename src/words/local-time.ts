/** A moment as the clock on the wall has it: `2026-11-26`, `10:37:00`, and the offset from UTC, `+01:00`. */
export interface WallTime {
	day: string;
	time: string;
	offset: string;
}

/** What the clock on the wall showed at an ISO time; null where that is no time. */
export type WallClock = (iso: string) => WallTime | null;

/** A time as people read it: `2026-11-26 10:37 +01:00`. What is no time stands as it is. */
export function localMinute(iso: string, clock: WallClock): string {
	const wall = clock(iso);
	return wall === null ? iso : `${wall.day} ${wall.time.slice(0, 5)} ${wall.offset}`;
}
