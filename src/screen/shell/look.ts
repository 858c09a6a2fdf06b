import { isPlain, isSpoken, type TerminalEnvironment, wantsAscii, wantsColor } from '../../terminal/color.ts';
import type { Tone } from '../text/line.ts';

/** How things are drawn on this terminal. */
export interface Look {
	color: boolean;
	/** No bold, no color: nothing but plain text. */
	plain: boolean;
	/** Only ASCII characters. */
	ascii: boolean;
	/** Read out by a screen reader: what is drawn elsewhere is said in words. */
	spoken: boolean;
	/** What fills a cell of a block digit. */
	ink: string;
}

/** `ascii`: asked for, whatever the terminal's environment says. */
export function lookOf(environment: TerminalEnvironment, noColor: boolean, ascii = false): Look {
	const only = ascii || wantsAscii(environment);
	return {
		color: wantsColor(environment, noColor),
		plain: isPlain(environment),
		ascii: only,
		spoken: isSpoken(environment),
		ink: only ? '#' : '█',
	};
}

export interface Style {
	bold?: boolean;
	dimColor?: boolean;
	inverse?: boolean;
	color?: string;
}

const STYLES: Record<Tone, Style> = {
	plain: {},
	strong: { bold: true },
	quiet: { dimColor: true },
	// Yellow cannot be read on a light ground.
	alert: { bold: true, color: 'magenta' },
	wrong: { bold: true, color: 'red' },
	good: { color: 'green' },
	inverse: { inverse: true },
};

/** A tone as Ink draws it: it is told by weight first, so that nothing is lost without colors. */
export function styleOf(tone: Tone, look: Look): Style {
	if (look.plain) return {};
	const { color, ...rest } = STYLES[tone];
	return look.color && color !== undefined ? { ...rest, color } : rest;
}
