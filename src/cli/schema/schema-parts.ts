/** Parts that several documents have in common, as zod types: the schemas that `pullbook schema` prints are made from them. */
import * as z from 'zod/mini';

export const numberType = z.number();
export const textType = z.string();
export const flag = z.boolean();
/** Counted from 1. */
export const ordinalType = z.int().check(z.minimum(1));
export const countType = z.int().check(z.minimum(0));
export const units = z.enum(['in', 'mm']);
export const end = z.enum(['start', 'far']);

/** What two in a row are. */
export const pair = z.tuple([ordinalType, ordinalType]);
export const turn = z.strictObject({
	degrees: numberType,
	way: z.enum(['clockwise', 'counterclockwise', 'either', 'none']),
});
export const mark = {
	fromStart: numberType,
	fromFarEnd: numberType,
	fromLastBend: z.nullable(numberType),
	tape: textType,
};
export const warning = z.strictObject({ at: textType, code: textType, text: textType });
export const bentAs = z.strictObject({ mirror: flag, from: end });
/** An angle or a length as it is believed to be, and how far off that may be: one standard deviation. */
export const angleEstimate = z.strictObject({ angle: numberType, sd: numberType });
/** A fact with numbers by name: the codes are listed by `pullbook help line-mode`. */
export const reason = z.looseObject({ code: textType });
