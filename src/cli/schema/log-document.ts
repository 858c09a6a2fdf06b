import * as z from 'zod/mini';
import { SESSION_STATUSES } from '../../session/report/views.ts';
import {
	angleEstimateType,
	bentAsType,
	countType,
	endType,
	flagType,
	markTypes,
	numberType,
	ordinalType,
	pairType,
	reasonType,
	textType,
	turnType,
	unitsType,
	warningType,
} from './schema-parts.ts';

const figureType = z.optional(z.nullable(numberType));
const dieKept = {
	clr: z.optional(numberType),
	growth: figureType,
	stretch: z.optional(numberType),
	clamp: z.optional(numberType),
	follow: z.optional(numberType),
	markOffset: z.optional(numberType),
	maxAngle: z.optional(numberType),
	floor: figureType,
};

const straightPlaceKept = z.strictObject({ straight: ordinalType, at: z.optional(z.literal('end')) });
const cornerKept = z.union([z.strictObject({ bend: ordinalType }), z.strictObject({ end: endType })]);
const checkFieldsKept = { name: textType, tolerance: numberType };
const checkKept = z.union([
	z.strictObject({
		...checkFieldsKept,
		kind: z.literal('drop'),
		from: ordinalType,
		to: z.union([z.strictObject({ bend: ordinalType }), straightPlaceKept]),
		surface: z.enum(['centre', 'across']),
	}),
	z.strictObject({ ...checkFieldsKept, kind: z.literal('angle'), between: pairType }),
	z.strictObject({ ...checkFieldsKept, kind: z.literal('span'), from: cornerKept, to: cornerKept }),
	z.strictObject({ ...checkFieldsKept, kind: z.literal('out'), plane: pairType, to: straightPlaceKept }),
	z.strictObject({
		...checkFieldsKept,
		kind: z.literal('width'),
		from: ordinalType,
		to: straightPlaceKept,
		surface: z.enum(['outside', 'inside', 'center']),
	}),
	z.strictObject({
		...checkFieldsKept,
		kind: z.literal('overall'),
		axis: z.enum(['x', 'y', 'z']),
		at: z.optional(z.literal('end')),
	}),
	z.strictObject({ ...checkFieldsKept, kind: z.literal('ovality'), bend: ordinalType }),
]);

const endFitKept = z.strictObject({
	cope: z.strictObject({ od: numberType, angle: numberType, offset: numberType, turn: numberType }),
});

/** The job as it is bent: every length a number in its units. */
const jobKept = z.strictObject({
	name: textType,
	units: unitsType,
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
		...dieKept,
		clr: numberType,
		dialStep: numberType,
		tape: numberType,
		dies: z.optional(z.record(textType, z.strictObject(dieKept))),
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
	mayOpen: flagType,
	quantity: ordinalType,
	ends: z.optional(z.strictObject({ start: z.optional(endFitKept), far: z.optional(endFitKept) })),
	checks: z.array(checkKept),
	notes: textType,
	bentAs: z.optional(bentAsType),
});

const askedMark = z.strictObject({ ...markTypes, moved: numberType });

const setUpKept = z.strictObject({
	entry: ordinalType,
	seat: ordinalType,
	mark: z.strictObject({ asked: z.nullable(askedMark), made: z.nullable(z.strictObject({ fromStart: numberType })) }),
	rotation: z.strictObject({ asked: z.nullable(numberType), made: z.nullable(numberType) }),
	turn: z.strictObject({ asked: z.nullable(turnType), made: z.nullable(turnType) }),
	void: flagType,
});

const pullKept = z.strictObject({
	seat: countType,
	mark: z.nullable(askedMark),
	turn: z.nullable(turnType),
	entry: ordinalType,
	pointer: z.nullable(numberType),
	stop: numberType,
	loaded: numberType,
	released: z.nullable(numberType),
	measured: z.array(numberType),
	opened: z.optional(z.array(countType)),
	void: flagType,
	why: z.nullable(textType),
	reason: z.nullable(z.array(reasonType)),
});

/** What `log ID --json` prints. */
export const logDocument = z.strictObject({
	id: textType,
	job: jobKept,
	status: z.enum(SESSION_STATUSES),
	started: z.iso.datetime(),
	ended: z.nullable(z.iso.datetime()),
	bends: z.array(
		z.strictObject({
			design: numberType,
			target: numberType,
			setUps: z.array(setUpKept),
			pulls: z.array(pullKept),
			made: z.nullable(angleEstimateType),
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
		fits: z.nullable(flagType),
	}),
	heat: z.optional(textType),
	quantity: z.optional(ordinalType),
	piece: z.optional(ordinalType),
	simulated: z.optional(z.literal(true)),
	warnings: z.optional(z.array(warningType)),
	notes: z.array(textType),
	events: countType,
	bentAs: z.optional(bentAsType),
});
