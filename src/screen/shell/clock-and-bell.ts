/** What the screen needs of the world besides files. */
export interface ClockAndBell {
	/** Milliseconds of a clock that only goes forward. */
	now(): number;
	/** Rings the terminal's bell. */
	ring(): void;
}
