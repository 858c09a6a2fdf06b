import type { Instance } from 'ink';
import { isPlain, isSpoken, type TerminalEnvironment } from '../../terminal/color.ts';
import { type KeySource, KeyStream } from '../../terminal/key-stream.ts';
import { ScreenOutput, type Sink, sizeOf } from '../../terminal/output.ts';
import { ScreenMode } from '../../terminal/screen-mode.ts';
import { stopJob, watchSignals } from '../../terminal/signals.ts';
import type { HomePort } from '../home/home-port.ts';
import type { ClockAndBell } from './clock-and-bell.ts';
import { Controller } from './controller.ts';
import type { Display, DisplayPort } from './display.ts';
import { drawnEarly } from './early.ts';
import { lookOf } from './look.ts';
import type { ScreenOpening } from './opening.ts';

export interface ScreenOptions extends ScreenOpening {
	port: HomePort;
	noColor?: boolean;
	/** Only ASCII characters. */
	ascii?: boolean;
	/** Where choices about how things are shown are kept; left out: for this run alone. */
	display?: DisplayPort;
	/** A clock and a bell other than the terminal's own. */
	world?: Partial<ClockAndBell>;
	stdin?: KeySource;
	stdout?: Sink;
	environment?: TerminalEnvironment;
}

const BELL = '\x07';

/** Ctrl-C, and a terminal that has hung up: as the signals would. */
const INTERRUPTED = 130;
const HUNG_UP = 129;

/**
 * Opens the interface on the terminal and resolves with the exit code when it is closed: 0 done, 3 left to be resumed, 5 not
 * saved, 128 + n ended by signal n. Both streams must be terminals.
 * @throws what `openSession` threw, when the screen was opened for one job; the terminal is as it was before
 */
export async function openScreen(options: ScreenOptions): Promise<number> {
	const { stdin = process.stdin, stdout = process.stdout, environment = process.env, port, noColor = false } = options;
	const { ascii = false, display = forThisRun() } = options;
	const world = { now: () => performance.now(), ring: () => stdout.write(BELL), ...options.world };
	const controller = new Controller(port, options, () => sizeOf(stdout), display, world);
	// It may be refused while the first frame is still being drawn; whoever waits for it below hears of it.
	controller.ended.catch(() => undefined);
	const keys = new KeyStream(stdin, { slow: controller.inText });
	const spoken = isSpoken(environment);
	const plain = isPlain(environment) || spoken;
	const output = new ScreenOutput(stdout, plain, spoken);
	const mode = new ScreenMode(stdout, plain);
	const look = { ...lookOf(environment, noColor, ascii), plain };
	const screen = new Shown(controller, keys);
	let exitCode = 0;
	const unwatch = follow(controller, keys, mode, screen, output);
	try {
		mode.enter();
		screen.show();
		const early = plain ? () => {} : await drawnEarly(controller, keys, output, look);
		const { inkScreen } = await import('./ink-screen.tsx');
		early();
		screen.drawnBy(() => inkScreen(controller, look, keys, output));
		exitCode = await controller.ended;
		return exitCode;
	} finally {
		unwatch();
		screen.hide();
		mode.leave();
		keys.close();
		output.close();
		// A terminal that has hung up shows nothing any more.
		if (controller.farewell !== null && exitCode !== HUNG_UP) stdout.write(controller.farewell);
	}
}

/** Choices that are kept as long as the program runs. */
function forThisRun(): DisplayPort {
	let kept: Partial<Display> = {};
	return {
		kept: () => kept,
		keep: (changes) => {
			kept = { ...kept, ...changes };
		},
	};
}

/** What Ink draws, which can be taken off the terminal and put back: nothing is kept in it. */
class Shown {
	private instance: Instance | null = null;
	private draw: (() => Instance) | null = null;
	private wanted = false;

	constructor(
		private readonly controller: Controller,
		private readonly keys: KeyStream,
	) {}

	/** From now on there is something to draw with. */
	drawnBy(draw: () => Instance): void {
		this.draw = draw;
		if (this.wanted) this.show();
	}

	show(): void {
		this.wanted = true;
		// At once, so that the terminal itself writes no key over the first frame.
		this.keys.setRawMode(true);
		if (this.draw === null) return;
		this.instance = this.draw();
		this.instance.waitUntilExit().catch(this.controller.fail);
	}

	hide(): void {
		this.wanted = false;
		this.instance?.unmount();
		this.instance = null;
		this.keys.setRawMode(false);
	}
}

/** Hears what ends or stops the program from outside; the function returned stops hearing it. */
function follow(
	controller: Controller,
	keys: KeyStream,
	mode: ScreenMode,
	screen: Shown,
	output: ScreenOutput,
): () => void {
	// Nothing is drawn any more while the program is stopped, or once it has ended.
	let idle = false;
	let over = false;
	const away = () => {
		screen.hide();
		mode.leave();
	};
	const back = () => {
		idle = false;
		if (over) return;
		mode.enter();
		output.forget();
		screen.show();
	};
	keys.on('interrupt', () => controller.end(INTERRUPTED));
	keys.on('gone', () => controller.end(HUNG_UP));
	keys.on('suspend', () => {
		idle = true;
		away();
		stopJob().then(back, controller.fail);
	});
	const unwatch = watchSignals({
		end: controller.end,
		goOn: () => {
			if (idle || over) return;
			away();
			back();
		},
	});
	return () => {
		over = true;
		unwatch();
	};
}
