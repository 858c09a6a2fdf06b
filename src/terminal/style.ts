/** How a text stands out. Colors by their names in the terminal's own palette, so that light and dark ones both can be read. */
export interface TextStyle {
	bold?: boolean;
	dimColor?: boolean;
	inverse?: boolean;
	color?: string;
}

/** On and off, parameters of SGR (ECMA-48, 8.3.117), in the order in which Ink nests them: what it draws later is then the same bytes. */
const BOLD = [1, 22] as const;
const FAINT = [2, 22] as const;
const NEGATIVE = [7, 27] as const;
const COLORS: Record<string, readonly [number, number]> = { red: [31, 39], green: [32, 39], magenta: [35, 39] };

/** The text with the sequences that make it stand out, and those that end it. */
export function styled(text: string, { bold, dimColor, inverse, color }: TextStyle): string {
	const around = [
		...(inverse ? [NEGATIVE] : []),
		...(bold ? [BOLD] : []),
		...(color === undefined ? [] : [COLORS[color]!]),
		...(dimColor ? [FAINT] : []),
	];
	return around.reduceRight((inner, [on, off]) => `\x1b[${on}m${inner}\x1b[${off}m`, text);
}
