import { setImmediate as turn } from 'node:timers/promises';
import type { HomePort } from '../../../src/screen/home/home-port.ts';
import { frameOf } from '../../../src/screen/shell/app-frame.ts';
import { Controller } from '../../../src/screen/shell/controller.ts';
import { keyOfChunk } from '../../../src/screen/shell/keys.ts';
import { lookOf } from '../../../src/screen/shell/look.ts';
import type { TerminalEnvironment } from '../../../src/terminal/color.ts';
import { ESCAPE } from '../../../src/terminal/key-codes.ts';
import type { Size } from '../../../src/terminal/output.ts';

export interface FrameOptions {
	/** Left out: the home page. */
	jobPath?: string;
	/** What is typed first. */
	keys?: string;
	/** Milliseconds between two keys. */
	gap?: number;
	ascii?: boolean;
	environment?: TerminalEnvironment;
}

/** One key: an arrow's sequence, or a character. */
const KEY = new RegExp(`${ESCAPE}\\[[A-Z]|[^]`, 'g');

/** Choices about how things are shown, of which none is kept. */
const NONE_KEPT = { kept: () => ({}), keep: () => {} };

/** The text of the frame that the pure function makes of a page, reached by the controller alone: without Ink and without a terminal. @throws what would end the screen */
export async function frameText(port: HomePort, size: Size, options: FrameOptions = {}): Promise<string> {
	const { jobPath, keys = '', gap = 1000, ascii = false, environment = { TERM: 'xterm' } } = options;
	let time = 0;
	const controller = new Controller(port, jobPath === undefined ? {} : { jobPath }, () => size, NONE_KEPT, {
		now: () => time,
		ring: () => {},
	});
	let failed: { error: unknown } | null = null;
	controller.ended.catch((error: unknown) => {
		failed = { error };
	});
	const opened = async () => {
		while (controller.snapshot().view === 'waiting' && failed === null) await turn();
		if (failed !== null) throw failed.error;
	};
	await opened();
	for (const chunk of keys.match(KEY) ?? []) {
		time += gap;
		const key = keyOfChunk(chunk);
		if (key !== null) controller.take(key);
	}
	await opened();
	const { lines, textAt } = frameOf(controller.snapshot(), size, lookOf(environment, false, ascii));
	const field = `> ${controller.text()}`;
	controller.end(0);
	return lines
		.map((line, at) => (at === textAt ? field : line.map(({ text }) => text).join('')).trimEnd())
		.join('\n')
		.trimEnd();
}
