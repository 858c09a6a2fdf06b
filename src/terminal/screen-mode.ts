import type { Sink } from './output.ts';

const ALTERNATE_ON = '\x1b[?1049h\x1b[H';
const ALTERNATE_OFF = '\x1b[?1049l';
const CURSOR_ON = '\x1b[?25h';
const CURSOR_OFF = '\x1b[?25l';

/**
 * The alternate screen, by hand since Ink 6 has none: the shell's own lines and its scrollback come back as they were, however
 * the program ends (except by SIGKILL, which nothing can help).
 */
export class ScreenMode {
	private on = false;

	constructor(
		private readonly sink: Sink,
		/** A terminal that knows no escape sequences is written to without them. */
		private readonly plain: boolean,
	) {}

	enter(): void {
		if (this.on) return;
		this.on = true;
		// process.exit() from anywhere, and the stack of an error nobody caught, which must be printed on the shell's own screen.
		process.on('exit', this.leave);
		process.on('uncaughtExceptionMonitor', this.leave);
		if (!this.plain) this.sink.write(ALTERNATE_ON + CURSOR_OFF);
	}

	readonly leave = (): void => {
		if (!this.on) return;
		this.on = false;
		process.off('exit', this.leave);
		process.off('uncaughtExceptionMonitor', this.leave);
		if (!this.plain) this.sink.write(CURSOR_ON + ALTERNATE_OFF);
	};
}
