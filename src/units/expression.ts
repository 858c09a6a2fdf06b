/** Reads sums, products and mixed numbers, and refuses whatever two people could read as two numbers. */
import { plainText, type Token, tokensOf } from './tokens.ts';
import type { Unit } from './units.ts';
import { type NumberWanted, UnitsError, type UnitsFault } from './units-error.ts';

/** What is read: `units` tells which unit words may stand after a number. */
export interface ExpressionReader {
	units(word: string): Unit | undefined;
	wanted: NumberWanted;
}

/** A number read so far, and in whose unit: none was written, the one bare numbers are in, or another one. */
interface Value {
	value: number;
	unit: 'bare' | 'own' | 'other';
}

/** No number takes more characters to write: a text from elsewhere must not nest brackets without end. */
const LONGEST = 512;

/**
 * The value of a text in the reader's unit.
 * @throws UnitsError with the text and what is wrong with it
 */
export function evaluate(text: string, reader: ExpressionReader): number {
	const wrong = (fault: UnitsFault, as = text) => new UnitsError(as, fault, reader.wanted);
	if (text.length > LONGEST) throw wrong({ code: 'too-long' }, `${text.slice(0, LONGEST)}…`);
	const tokens = tokensOf(plainText(text));
	if (typeof tokens === 'string') throw wrong({ code: 'unknown-sign', text: tokens });
	if (tokens.length === 0) throw wrong({ code: 'empty' });
	const { value } = new Expression(text, tokens, reader).whole();
	if (!Number.isFinite(value)) throw wrong({ code: 'divided-by-nothing' });
	return value;
}

class Expression {
	private at = 0;

	constructor(
		private readonly text: string,
		private readonly tokens: readonly Token[],
		private readonly reader: ExpressionReader,
	) {}

	whole(): Value {
		const value = this.sum();
		const rest = this.tokens[this.at];
		if (rest === undefined) return value;
		if (rest.text === ')') throw this.wrong({ code: 'bracket-not-opened' });
		if (rest.kind === 'unit') throw this.wrong({ code: 'unit-alone', text: rest.text });
		throw this.wrong({ code: 'side-by-side', text: rest.text });
	}

	private sum(): Value {
		const sign = this.takeSign('+-');
		let left = this.product();
		if (sign === '-') left = { ...left, value: -left.value };
		for (let op = this.takeSign('+-'); op !== null; op = this.takeSign('+-')) {
			const right = this.product();
			if ((left.unit === 'bare') !== (right.unit === 'bare') && (left.unit === 'other' || right.unit === 'other')) {
				throw this.wrong({ code: 'one-without-unit' });
			}
			const unit = left.unit === 'bare' ? right.unit : left.unit;
			left = { value: op === '+' ? left.value + right.value : left.value - right.value, unit };
		}
		return left;
	}

	private product(): Value {
		let left = this.factor();
		for (let op = this.peekSign('*/'); op !== null; op = this.peekSign('*/')) {
			if (op === '/' && this.tokens[this.at - 1]?.kind === 'fraction' && !this.tokens[this.at]?.gap) {
				throw this.wrong({ code: 'two-strokes' });
			}
			this.at++;
			const next = this.at;
			const right = this.factor();
			const fraction = this.tokens.slice(next, this.at).some(({ kind }) => kind === 'fraction');
			if (op === '/' && fraction && this.tokens[next]?.text !== '(') {
				throw this.wrong({ code: 'over-a-fraction' });
			}
			left = op === '*' ? this.times(left, right) : this.over(left, right);
		}
		return left;
	}

	private times(left: Value, right: Value): Value {
		if (left.unit !== 'bare' && right.unit !== 'bare') throw this.wrong({ code: 'units-multiplied' });
		return { value: left.value * right.value, unit: left.unit === 'bare' ? right.unit : left.unit };
	}

	private over(left: Value, right: Value): Value {
		if (right.unit !== 'bare') throw this.wrong({ code: 'unit-in-divisor' });
		return { value: left.value / right.value, unit: left.unit };
	}

	private factor(): Value {
		if (this.takeSign('(') === null) return this.quantity();
		const value = this.sum();
		if (this.takeSign(')') === null) throw this.wrong({ code: 'bracket-not-closed' });
		return value;
	}

	/** A number with its unit; feet take inches after them. */
	private quantity(): Value {
		const number = this.mixed();
		const unit = this.unit();
		if (unit === null) return { value: number, unit: 'bare' };
		const parts = unit.part === undefined ? null : this.parts(unit.part.unit);
		if (unit.part === undefined || parts === null) {
			return { value: unit.convert(number), unit: unit.own ? 'own' : 'other' };
		}
		// Added up before they are converted, so that 2' 6" comes out as 30 in does.
		const part = unit.part.unit;
		return { value: part.convert(number * unit.part.count + parts), unit: part.own ? 'own' : 'other' };
	}

	/** The inches after feet: 6 1/2", 6 or, written closely, -6; a hyphen with gaps could also mean a difference. */
	private parts(inch: Unit): number | null {
		const [sign, after] = this.tokens.slice(this.at, this.at + 2);
		const hyphen = sign?.kind === 'sign' && sign.text === '-';
		if (hyphen && after?.text === '(') return null;
		if (hyphen && (sign.gap || after?.gap)) {
			throw this.wrong({ code: 'spaced-after-feet' });
		}
		if (hyphen) this.at++;
		else if (sign?.kind !== 'number' && sign?.kind !== 'fraction') return null;
		const number = this.mixed();
		const unit = this.unit();
		if (unit !== null && unit.name !== inch.name) throw this.wrong({ code: 'other-than-inches' });
		return number;
	}

	private unit(): Unit | null {
		const token = this.tokens[this.at];
		if (token?.kind !== 'unit') return null;
		const unit = this.reader.units(token.text);
		if (unit === undefined) throw this.wrong({ code: 'unknown-unit', text: token.text });
		this.at++;
		return unit;
	}

	/** A number, a fraction, or a whole number and a fraction (31 1/2, 9-3/8). */
	private mixed(): number {
		const first = this.tokens[this.at];
		if (first?.kind !== 'number' && first?.kind !== 'fraction') {
			throw this.wrong(first === undefined ? { code: 'breaks-off' } : { code: 'number-missing', text: first.text });
		}
		this.at++;
		const fraction = first.kind === 'number' && first.plain ? this.takeFraction(first.text) : null;
		return first.value + (fraction ?? 0);
	}

	private takeFraction(whole: string): number | null {
		const [first, second] = this.tokens.slice(this.at, this.at + 2);
		const hyphen = first?.kind === 'sign' && first.text === '-';
		const fraction = hyphen ? second : first;
		if (fraction?.kind !== 'fraction') return null;
		const gaps = hyphen ? Number(first.gap) + Number(fraction.gap) : 0;
		if (gaps === 2) return null;
		if (gaps === 1) throw this.wrong({ code: 'half-spaced', whole, fraction: fraction.text });
		if (!fraction.plain) throw this.wrong({ code: 'fraction-of-one-or-more', fraction: fraction.text });
		this.at += hyphen ? 2 : 1;
		return fraction.value;
	}

	private peekSign(signs: string): string | null {
		const token = this.tokens[this.at];
		return token?.kind === 'sign' && signs.includes(token.text) ? token.text : null;
	}

	private takeSign(signs: string): string | null {
		const sign = this.peekSign(signs);
		if (sign !== null) this.at++;
		return sign;
	}

	private wrong(fault: UnitsFault): UnitsError {
		return new UnitsError(this.text, fault, this.reader.wanted);
	}
}
