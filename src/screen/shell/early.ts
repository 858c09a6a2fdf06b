import type { KeyStream } from '../../terminal/key-stream.ts';
import type { ScreenOutput } from '../../terminal/output.ts';
import { styled } from '../../terminal/style.ts';
import type { Line } from '../text/line.ts';
import { frameOf } from './app-frame.ts';
import type { Controller } from './controller.ts';
import { keyOfChunk } from './keys.ts';
import { type Look, styleOf } from './look.ts';

/**
 * Draws the screen as soon as there is one and takes the keys that are typed meanwhile: Ink takes longer to load than all the rest, and then
 * draws over it what it shows already. Gives the function that hands both over to Ink.
 */
export async function drawnEarly(
	controller: Controller,
	keys: KeyStream,
	output: ScreenOutput,
	look: Look,
): Promise<() => void> {
	const paint = () => {
		const { lines, textAt } = frameOf(controller.snapshot(), { columns: output.columns, rows: output.rows }, look);
		output.paint(lines.map((line, at) => (at === textAt ? `> ${controller.text()}` : styledText(line, look))));
	};
	const take = (chunk: string) => {
		const key = keyOfChunk(chunk);
		if (key !== null) controller.take(key);
	};
	// A session that opens at once is open by then.
	await new Promise((resolve) => setImmediate(resolve));
	paint();
	const unsubscribe = controller.subscribe(paint);
	keys.on('data', take);
	return () => {
		unsubscribe();
		keys.off('data', take);
		keys.pause();
	};
}

function styledText(parts: Line, look: Look): string {
	return parts
		.filter((part) => part.text !== '')
		.map((part) => styled(part.text, styleOf(part.tone, look)))
		.join('')
		.trimEnd();
}
