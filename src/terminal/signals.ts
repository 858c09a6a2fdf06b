import { constants } from 'node:os';

/** Every signal that ends a program unless it is heard and that can be heard; those of Node's own use (SIGUSR1, SIGPIPE, SIGPROF) left out. */
const ENDING = [
	'SIGHUP',
	'SIGINT',
	'SIGQUIT',
	'SIGABRT',
	'SIGUSR2',
	'SIGALRM',
	'SIGTERM',
	'SIGXCPU',
	'SIGXFSZ',
	'SIGVTALRM',
] as const;

/** The exit code of a program ended by `signal`: 128 and its number. */
export function signalExitCode(signal: (typeof ENDING)[number]): number {
	return 128 + constants.signals[signal];
}

export interface SignalHandlers {
	/** The program is to end with this exit code. */
	end(exitCode: number): void;
	/** The program goes on after having been stopped: whatever stood on the screen is gone. */
	goOn(): void;
}

/** Hears the signals that end or continue the program, until the function returned is called. */
export function watchSignals(handlers: SignalHandlers): () => void {
	const enders = ENDING.map((signal) => ({ signal, listener: () => handlers.end(signalExitCode(signal)) }));
	const goOn = () => handlers.goOn();
	for (const { signal, listener } of enders) process.on(signal, listener);
	process.on('SIGCONT', goOn);
	return () => {
		for (const { signal, listener } of enders) process.off(signal, listener);
		process.off('SIGCONT', goOn);
	};
}

/** A stop signal reaches the program within microseconds; past this, nobody is there to stop it (an orphaned group). */
const STOP_WITHIN_MS = 100;

/**
 * Stops the whole job, as Ctrl-Z does outside raw mode (npm included, if it started us); resolves when it goes on. Where there
 * is no stopping (Windows) it goes on at once.
 */
export function stopJob(): Promise<void> {
	if (process.platform === 'win32') return Promise.resolve();
	return new Promise((resolve) => {
		const done = () => {
			clearTimeout(timer);
			process.off('SIGCONT', done);
			resolve();
		};
		const timer = setTimeout(done, STOP_WITHIN_MS);
		process.on('SIGCONT', done);
		process.kill(0, 'SIGTSTP');
	});
}
