/** Splits what a person writes for a quantity into numbers, fractions, unit words and signs. */
export interface Token {
	kind: 'number' | 'fraction' | 'unit' | 'sign';
	/** As written, quotes and signs made plain. */
	text: string;
	/** Of a number or fraction, else 0. */
	value: number;
	/** A whole number, or a fraction under 1: the parts that a mixed number is made of. */
	plain: boolean;
	/** Whether white space stands before it. */
	gap: boolean;
}

const PATTERN =
	/(?<gap>\s*)(?:(?<fraction>\d+\/\d+)(?![\d.,])|(?<number>\d+(?:[.,]\d*)?|[.,]\d+)(?![\d.,])|(?<unit>[a-z]+\.?|''|["'°])|(?<sign>[-+*/()]))/uy;

/** The same text with typographic fractions, quotes, dashes and signs made plain. */
export function plainText(text: string): string {
	return text
		.replace(/(\d?)([¼-¾⅐-⅞↉])(?=(\d?))/g, (_, before: string, sign: string, after: string) => {
			// Parted from a digit beside it, for 2½ is not 21/2.
			return `${before}${before && ' '}${sign.normalize('NFKC')}${after && ' '}`;
		})
		.replace(/[’‘´`ʹ′]/g, "'")
		.replace(/[”“ʺ″]/g, '"')
		.replace(/[−–—‐‑‒]/g, '-')
		.replace(/[×·]/g, '*')
		.replace(/[⁄∕÷]/g, '/')
		.normalize('NFKC')
		.toLowerCase()
		.trim();
}

/** The tokens of a plain text; or, as a string, the part from which it cannot be read. */
export function tokensOf(plain: string): Token[] | string {
	const tokens: Token[] = [];
	PATTERN.lastIndex = 0;
	while (PATTERN.lastIndex < plain.length) {
		const from = PATTERN.lastIndex;
		const match = PATTERN.exec(plain);
		if (match === null) return plain.slice(from).trim();
		tokens.push(tokenOf(match.groups ?? {}));
	}
	return tokens;
}

function tokenOf({ gap, fraction, number, unit, sign }: Record<string, string | undefined>): Token {
	const base = { gap: gap !== '', value: 0, plain: false };
	if (fraction !== undefined) {
		const [over, under] = fraction.split('/').map(Number) as [number, number];
		return { ...base, kind: 'fraction', text: fraction, value: over / under, plain: over < under };
	}
	if (number !== undefined) {
		const value = Number(number.replace(',', '.'));
		return { ...base, kind: 'number', text: number, value, plain: /^\d+$/.test(number) };
	}
	if (unit !== undefined) return { ...base, kind: 'unit', text: unit === "''" ? '"' : unit.replace(/\.$/, '') };
	return { ...base, kind: 'sign', text: sign ?? '' };
}
