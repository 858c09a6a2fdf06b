import type { WallTime } from '../words/local-time.ts';

/** What the clock on the wall shows at an ISO time; `ahead`: minutes that it is ahead of UTC then, as the system has it. */
export function wallClock(iso: string, ahead: (at: Date) => number = (at) => -at.getTimezoneOffset()): WallTime | null {
	const at = new Date(iso);
	if (Number.isNaN(at.getTime())) return null;
	const minutes = ahead(at);
	const wall = new Date(at.getTime() + minutes * 60_000).toISOString();
	const two = (n: number) => String(n).padStart(2, '0');
	const size = Math.abs(minutes);
	const offset = `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
	return { day: wall.slice(0, 10), time: wall.slice(11, 19), offset };
}
