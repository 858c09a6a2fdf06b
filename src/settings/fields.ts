import type { KeptTooling } from '../tube/kept-tooling.ts';

export type FieldName = keyof KeptTooling;

/** What a kept value may be: above `above`, from `least`, up to `most`. Angles in degrees, ratios without unit. */
interface Field {
	kind: 'length' | 'angle' | 'ratio';
	above?: number;
	least?: number;
	most?: number;
}

/** Every field that is kept of a bender or a die, in the order in which it is shown. */
export const FIELDS: Readonly<Record<FieldName, Field>> = {
	clr: { kind: 'length', above: 0 },
	growth: { kind: 'ratio', least: 0.5, most: 2 },
	stretch: { kind: 'ratio', above: -0.5, most: 0.5 },
	clamp: { kind: 'length', least: 0 },
	follow: { kind: 'length', least: 0 },
	markOffset: { kind: 'length' },
	maxAngle: { kind: 'angle', above: 0, most: 360 },
	dialStep: { kind: 'angle', above: 0, most: 45 },
	tape: { kind: 'length', above: 0 },
	floor: { kind: 'length', least: 0 },
};

export const FIELD_NAMES = Object.keys(FIELDS) as FieldName[];

/** Null where the value may be kept, else what would be right, in words. */
export function wrongValue(name: FieldName, value: number): string | null {
	const { kind, above, least, most } = FIELDS[name];
	const right =
		Number.isFinite(value) &&
		(above === undefined || value > above) &&
		(least === undefined || value >= least) &&
		(most === undefined || value <= most);
	if (right) return null;
	const from = above !== undefined ? ` above ${above}` : least !== undefined ? ` from ${least}` : '';
	return `${kind === 'angle' ? 'an angle in degrees' : `a ${kind}`}${from}${most === undefined ? '' : ` to ${most}`}`;
}

/** Null where a bender or die may be called so, else what would be right. A control character would garble every screen. */
export const wrongName = (name: string): string | null =>
	name.trim() === '' || /\p{Cc}/u.test(name) ? 'a name of visible characters on one line' : null;
