/** Parts that several documents have in common, as zod types: the schemas that `pullbook schema` prints are made from them. */
import * as z from 'zod/mini';

export const numberType = z.number();
export const textType = z.string();
export const flagType = z.boolean();
/** Counted from 1. */
export const ordinalType = z.int().check(z.minimum(1));
export const countType = z.int().check(z.minimum(0));
export const unitsType = z.enum(['in', 'mm']);
export const endType = z.enum(['start', 'far']);

/** What two in a row are. */
export const pairType = z.tuple([ordinalType, ordinalType]);
export const turnType = z.strictObject({
	degrees: numberType,
	way: z.enum(['clockwise', 'counterclockwise', 'either', 'none']),
});
export const markTypes = {
	fromStart: numberType,
	fromFarEnd: numberType,
	fromLastBend: z.nullable(numberType),
	tape: textType,
};
export const warningType = z.strictObject({ at: textType, code: textType, text: textType });
export const bentAsType = z.strictObject({ mirror: flagType, from: endType });
/** An angle or a length as it is believed to be, and how far off that may be: one standard deviation. */
export const angleEstimateType = z.strictObject({ angle: numberType, sd: numberType });
/** A fact with numbers by name: the codes are listed by `pullbook help line-mode`. */
export const reasonType = z.looseObject({ code: textType });
