import { Box, Text } from 'ink';
import TextInput from 'ink-text-input';
import { memo } from 'react';
import type { Line } from '../text/line.ts';
import type { Frame } from './frame.ts';
import { type Look, styleOf } from './look.ts';

interface Props {
	frame: Frame;
	look: Look;
	/** What the text field holds. */
	text: string;
	onText(value: string): void;
	onEntered(): void;
}

/** A frame as Ink elements: one text a line, and the text field in its place. */
export function FrameView({ frame, look, text, onText, onEntered }: Props) {
	return (
		<>
			{frame.lines.map((line, at) =>
				at === frame.textAt ? (
					// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
					<Box key={at}>
						<Text>{'> '}</Text>
						<TextInput value={text} onChange={onText} onSubmit={onEntered} />
					</Box>
				) : (
					// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
					<FrameRow key={at} line={line} look={look} />
				),
			)}
		</>
	);
}

/** One row of the screen; drawn anew only when its text or its tones change. */
export const FrameRow = memo(
	function Row({ line, look }: { line: Line; look: Look }) {
		return (
			<Text wrap="truncate-end">
				{line.length === 0
					? ' '
					: line.map(({ text, tone }, at) => (
							// biome-ignore lint/suspicious/noArrayIndexKey: a span is its place in the row.
							<Text key={at} {...styleOf(tone, look)}>
								{text}
							</Text>
						))}
			</Text>
		);
	},
	(before, after) => before.look === after.look && same(before.line, after.line),
);

function same(a: Line, b: Line): boolean {
	return a.length === b.length && a.every(({ text, tone }, at) => text === b[at]?.text && tone === b[at]?.tone);
}
