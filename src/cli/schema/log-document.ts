import * as z from 'zod/mini';
import {
	angleEstimate,
	bentAs,
	countType,
	end,
	flag,
	mark,
	numberType,
	ordinalType,
	pair,
	reason,
	textType,
	turn,
	units,
	warning,
} from './schema-parts.ts';

const figure = z.optional(z.nullable(numberType));
const dieFields = {
	clr: z.optional(numberType),
	growth: figure,
	stretch: z.optional(numberType),
	clamp: z.optional(numberType),
	follow: z.optional(numberType),
	markOffset: z.optional(numberType),
	maxAngle: z.optional(numberType),
	floor: figure,
};

const straightPlace = z.strictObject({ straight: ordinalType, at: z.optional(z.literal('end')) });
const corner = z.union([z.strictObject({ bend: ordinalType }), z.strictObject({ end })]);
const ofCheck = { name: textType, tolerance: numberType };
const check = z.union([
	z.strictObject({
		...ofCheck,
		kind: z.literal('drop'),
		from: ordinalType,
		to: z.union([z.strictObject({ bend: ordinalType }), straightPlace]),
		surface: z.enum(['centre', 'across']),
	}),
	z.strictObject({ ...ofCheck, kind: z.literal('angle'), between: pair }),
	z.strictObject({ ...ofCheck, kind: z.literal('span'), from: corner, to: corner }),
	z.strictObject({ ...ofCheck, kind: z.literal('out'), plane: pair, to: straightPlace }),
	z.strictObject({
		...ofCheck,
		kind: z.literal('width'),
		from: ordinalType,
		to: straightPlace,
		surface: z.enum(['outside', 'inside', 'center']),
	}),
	z.strictObject({
		...ofCheck,
		kind: z.literal('overall'),
		axis: z.enum(['x', 'y', 'z']),
		at: z.optional(z.literal('end')),
	}),
	z.strictObject({ ...ofCheck, kind: z.literal('ovality'), bend: ordinalType }),
]);

const endFit = z.strictObject({
	cope: z.strictObject({ od: numberType, angle: numberType, offset: numberType, turn: numberType }),
});

/** The job as it is bent: every length a number in its units. */
const job = z.strictObject({
	name: textType,
	units,
	tube: z.strictObject({
		material: z.strictObject({ name: textType, yield: numberType, modulus: numberType }),
		od: numberType,
		wall: numberType,
		stock: z.nullable(numberType),
		heat: z.optional(textType),
	}),
	tooling: z.strictObject({
		bender: textType,
		die: textType,
		...dieFields,
		clr: numberType,
		dialStep: numberType,
		tape: numberType,
		dies: z.optional(z.record(textType, z.strictObject(dieFields))),
	}),
	shape: z.union([
		z.strictObject({
			kind: z.literal('bends'),
			bends: z.array(
				z.strictObject({ straight: numberType, angle: numberType, rotation: numberType, die: z.optional(textType) }),
			),
			last: numberType,
			radius: z.optional(numberType),
		}),
		z.strictObject({ kind: z.literal('points'), points: z.array(z.tuple([numberType, numberType, numberType])) }),
	]),
	trim: z.strictObject({ start: numberType, end: numberType }),
	tolerance: z.strictObject({
		under: numberType,
		over: numberType,
		length: numberType,
		rotation: numberType,
		shape: numberType,
		direction: numberType,
	}),
	risk: numberType,
	mayOpen: flag,
	quantity: ordinalType,
	ends: z.optional(z.strictObject({ start: z.optional(endFit), far: z.optional(endFit) })),
	checks: z.array(check),
	notes: textType,
	bentAs: z.optional(bentAs),
});

const askedMark = z.strictObject({ ...mark, moved: numberType });

const setUp = z.strictObject({
	entry: ordinalType,
	seat: ordinalType,
	mark: z.strictObject({ asked: z.nullable(askedMark), made: z.nullable(z.strictObject({ fromStart: numberType })) }),
	rotation: z.strictObject({ asked: z.nullable(numberType), made: z.nullable(numberType) }),
	turn: z.strictObject({ asked: z.nullable(turn), made: z.nullable(turn) }),
	void: flag,
});

const pull = z.strictObject({
	seat: countType,
	mark: z.nullable(askedMark),
	turn: z.nullable(turn),
	entry: ordinalType,
	pointer: z.nullable(numberType),
	stop: numberType,
	loaded: numberType,
	released: z.nullable(numberType),
	measured: z.array(numberType),
	opened: z.optional(z.array(countType)),
	void: flag,
	why: z.nullable(textType),
	reason: z.nullable(z.array(reason)),
});

/** What `log ID --json` prints. */
export const logDocument = z.strictObject({
	id: textType,
	job,
	status: z.enum(['open', 'done', 'scrapped']),
	started: z.iso.datetime(),
	ended: z.nullable(z.iso.datetime()),
	bends: z.array(
		z.strictObject({
			design: numberType,
			target: numberType,
			setUps: z.array(setUp),
			pulls: z.array(pull),
			made: z.nullable(angleEstimate),
		}),
	),
	checks: z.array(z.strictObject({ name: textType, design: numberType, reading: z.nullable(numberType) })),
	asBuilt: z.strictObject({
		straights: z.array(numberType),
		bends: z.array(z.strictObject({ angle: numberType, rotation: numberType })),
		endOffset: numberType,
		endAngle: numberType,
		sd: z.nullable(z.strictObject({ endOffset: numberType, endAngle: numberType })),
		chance: z.nullable(numberType),
		fits: z.nullable(flag),
	}),
	heat: z.optional(textType),
	quantity: z.optional(ordinalType),
	piece: z.optional(ordinalType),
	simulated: z.optional(z.literal(true)),
	warnings: z.optional(z.array(warning)),
	notes: z.array(textType),
	events: countType,
	bentAs: z.optional(bentAs),
});
