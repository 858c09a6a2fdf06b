import * as z from 'zod/mini';
import {
	angleEstimate,
	bentAs,
	countType,
	end,
	flag,
	mark,
	number,
	ordinal,
	pair,
	reason,
	text,
	turn,
	units,
	warning,
} from './parts.ts';

const figure = z.optional(z.nullable(number));
const dieFields = {
	clr: z.optional(number),
	growth: figure,
	stretch: z.optional(number),
	clamp: z.optional(number),
	follow: z.optional(number),
	markOffset: z.optional(number),
	maxAngle: z.optional(number),
	floor: figure,
};

const straightPlace = z.strictObject({ straight: ordinal, at: z.optional(z.literal('end')) });
const corner = z.union([z.strictObject({ bend: ordinal }), z.strictObject({ end })]);
const ofCheck = { name: text, tolerance: number };
const check = z.union([
	z.strictObject({
		...ofCheck,
		kind: z.literal('drop'),
		from: ordinal,
		to: z.union([z.strictObject({ bend: ordinal }), straightPlace]),
		surface: z.enum(['centre', 'across']),
	}),
	z.strictObject({ ...ofCheck, kind: z.literal('angle'), between: pair }),
	z.strictObject({ ...ofCheck, kind: z.literal('span'), from: corner, to: corner }),
	z.strictObject({ ...ofCheck, kind: z.literal('out'), plane: pair, to: straightPlace }),
	z.strictObject({
		...ofCheck,
		kind: z.literal('width'),
		from: ordinal,
		to: straightPlace,
		surface: z.enum(['outside', 'inside', 'center']),
	}),
	z.strictObject({
		...ofCheck,
		kind: z.literal('overall'),
		axis: z.enum(['x', 'y', 'z']),
		at: z.optional(z.literal('end')),
	}),
	z.strictObject({ ...ofCheck, kind: z.literal('ovality'), bend: ordinal }),
]);

const endFit = z.strictObject({ cope: z.strictObject({ od: number, angle: number, offset: number, turn: number }) });

/** The job as it is bent: every length a number in its units. */
const job = z.strictObject({
	name: text,
	units,
	tube: z.strictObject({
		material: z.strictObject({ name: text, yield: number, modulus: number }),
		od: number,
		wall: number,
		stock: z.nullable(number),
		heat: z.optional(text),
	}),
	tooling: z.strictObject({
		bender: text,
		die: text,
		...dieFields,
		clr: number,
		dialStep: number,
		tape: number,
		dies: z.optional(z.record(text, z.strictObject(dieFields))),
	}),
	shape: z.union([
		z.strictObject({
			kind: z.literal('bends'),
			bends: z.array(z.strictObject({ straight: number, angle: number, rotation: number, die: z.optional(text) })),
			last: number,
			radius: z.optional(number),
		}),
		z.strictObject({ kind: z.literal('points'), points: z.array(z.tuple([number, number, number])) }),
	]),
	trim: z.strictObject({ start: number, end: number }),
	tolerance: z.strictObject({
		under: number,
		over: number,
		length: number,
		rotation: number,
		shape: number,
		direction: number,
	}),
	risk: number,
	mayOpen: flag,
	quantity: ordinal,
	ends: z.optional(z.strictObject({ start: z.optional(endFit), far: z.optional(endFit) })),
	checks: z.array(check),
	notes: text,
	bentAs: z.optional(bentAs),
});

const askedMark = z.strictObject({ ...mark, moved: number });

const setUp = z.strictObject({
	entry: ordinal,
	seat: ordinal,
	mark: z.strictObject({ asked: z.nullable(askedMark), made: z.nullable(z.strictObject({ fromStart: number })) }),
	rotation: z.strictObject({ asked: z.nullable(number), made: z.nullable(number) }),
	turn: z.strictObject({ asked: z.nullable(turn), made: z.nullable(turn) }),
	void: flag,
});

const pull = z.strictObject({
	seat: countType,
	mark: z.nullable(askedMark),
	turn: z.nullable(turn),
	entry: ordinal,
	pointer: z.nullable(number),
	stop: number,
	loaded: number,
	released: z.nullable(number),
	measured: z.array(number),
	opened: z.optional(z.array(countType)),
	void: flag,
	why: z.nullable(text),
	reason: z.nullable(z.array(reason)),
});

/** What `log ID --json` prints. */
export const logDocument = z.strictObject({
	id: text,
	job,
	status: z.enum(['open', 'done', 'scrapped']),
	started: z.iso.datetime(),
	ended: z.nullable(z.iso.datetime()),
	bends: z.array(
		z.strictObject({
			design: number,
			target: number,
			setUps: z.array(setUp),
			pulls: z.array(pull),
			made: z.nullable(angleEstimate),
		}),
	),
	checks: z.array(z.strictObject({ name: text, design: number, reading: z.nullable(number) })),
	asBuilt: z.strictObject({
		straights: z.array(number),
		bends: z.array(z.strictObject({ angle: number, rotation: number })),
		endOffset: number,
		endAngle: number,
		sd: z.nullable(z.strictObject({ endOffset: number, endAngle: number })),
		chance: z.nullable(number),
		fits: z.nullable(flag),
	}),
	heat: z.optional(text),
	quantity: z.optional(ordinal),
	piece: z.optional(ordinal),
	simulated: z.optional(z.literal(true)),
	warnings: z.optional(z.array(warning)),
	notes: z.array(text),
	events: countType,
	bentAs: z.optional(bentAs),
});
