import { type Instance, render } from 'ink';
import type { KeyStream } from '../../terminal/key-stream.ts';
import type { ScreenOutput } from '../../terminal/output.ts';
import { App } from './App.tsx';
import type { Controller } from './controller.ts';
import type { Look } from './look.ts';

/** Draws what the controller holds, with Ink, until it is unmounted. */
export function inkScreen(controller: Controller, look: Look, keys: KeyStream, output: ScreenOutput): Instance {
	return render(<App controller={controller} look={look} />, {
		stdin: keys as unknown as NodeJS.ReadStream,
		stdout: output as unknown as NodeJS.WriteStream,
		exitOnCtrlC: false,
		patchConsole: false,
		// Whole frames, at once: the output draws what changed of them.
		debug: true,
	});
}
