import type {
	Axis,
	Bend,
	BentAs,
	Check,
	CornerName,
	DieFields,
	EndFit,
	EndName,
	Job,
	Material,
	Point,
	ShapeSource,
	StraightPlace,
	Tolerance,
	Tooling,
} from '../../../tube/job.ts';
import {
	either,
	type Is,
	isByTag,
	isEachOf,
	isFlag,
	isList,
	isNumber,
	isOf,
	isOneOf,
	isOrdinal,
	isText,
	isThree,
	isTwo,
	orAbsent,
	orNull,
} from './is.ts';

/** A job as a log has it: what its version did not know yet may be missing, and what always was there may not. */
export type LoggedJob = Omit<Job, 'mayOpen' | 'quantity' | 'tolerance'> &
	Partial<Pick<Job, 'mayOpen' | 'quantity'>> & { tolerance: LoggedTolerance };
type LoggedTolerance = Omit<Tolerance, 'shape' | 'direction'> & Partial<Pick<Tolerance, 'shape' | 'direction'>>;

const isEnd: Is<EndName> = isOneOf('start', 'far');

const fieldsOfDie = {
	clr: isNumber,
	growth: orNull(isNumber),
	stretch: isNumber,
	clamp: isNumber,
	follow: isNumber,
	markOffset: isNumber,
	maxAngle: isNumber,
	floor: orNull(isNumber),
};

const isFurtherDie: Is<Partial<DieFields>> = isOf<Partial<DieFields>>({
	clr: orAbsent(fieldsOfDie.clr),
	growth: orAbsent(fieldsOfDie.growth),
	stretch: orAbsent(fieldsOfDie.stretch),
	clamp: orAbsent(fieldsOfDie.clamp),
	follow: orAbsent(fieldsOfDie.follow),
	markOffset: orAbsent(fieldsOfDie.markOffset),
	maxAngle: orAbsent(fieldsOfDie.maxAngle),
	floor: orAbsent(fieldsOfDie.floor),
});

const isTooling: Is<Tooling> = isOf<Tooling>({
	...fieldsOfDie,
	bender: isText,
	die: isText,
	dialStep: isNumber,
	tape: isNumber,
	dies: orAbsent(isEachOf(isFurtherDie)),
});

const isBend: Is<Bend> = isOf<Bend>({ straight: isNumber, angle: isNumber, rotation: isNumber, die: orAbsent(isText) });

const isShape: Is<ShapeSource> = isByTag<'kind', ShapeSource>('kind', {
	bends: { bends: isList(isBend), last: isNumber, radius: orAbsent(isNumber) },
	points: { points: isList<Point>(isThree(isNumber)) },
});

const isBendName: Is<{ bend: number }> = isOf({ bend: isOrdinal });
const isStraight: Is<StraightPlace> = isOf<StraightPlace>({ straight: isOrdinal, at: orAbsent(isOneOf('end')) });
const isCorner: Is<CornerName> = either(isBendName, isOf({ end: isEnd }));
const isAxis: Is<Axis> = isOneOf('x', 'y', 'z');

const checkFields = { name: isText, tolerance: isNumber };
const isCheck: Is<Check> = isByTag<'kind', Check>('kind', {
	drop: { ...checkFields, from: isOrdinal, to: either(isBendName, isStraight), surface: isOneOf('centre', 'across') },
	angle: { ...checkFields, between: isTwo(isOrdinal) },
	span: { ...checkFields, from: isCorner, to: isCorner },
	out: { ...checkFields, plane: isTwo(isOrdinal), to: isStraight },
	width: { ...checkFields, from: isOrdinal, to: isStraight, surface: isOneOf('outside', 'inside', 'center') },
	overall: { ...checkFields, axis: isAxis, at: orAbsent(isOneOf('end')) },
	ovality: { ...checkFields, bend: isOrdinal },
});

const isEndFit: Is<EndFit> = isOf({ cope: isOf({ od: isNumber, angle: isNumber, offset: isNumber, turn: isNumber }) });

const isMaterial: Is<Material> = isOf({ name: isText, yield: isNumber, modulus: isNumber });

const isTolerance: Is<LoggedTolerance> = isOf<LoggedTolerance>({
	under: isNumber,
	over: isNumber,
	length: isNumber,
	rotation: isNumber,
	shape: orAbsent(isNumber),
	direction: orAbsent(isNumber),
});

export const isJob: Is<LoggedJob> = isOf<LoggedJob>({
	name: isText,
	units: isOneOf('in', 'mm'),
	tube: isOf<Job['tube']>({
		material: isMaterial,
		od: isNumber,
		wall: isNumber,
		stock: orNull(isNumber),
		heat: orAbsent(isText),
	}),
	tooling: isTooling,
	shape: isShape,
	trim: isOf({ start: isNumber, end: isNumber }),
	tolerance: isTolerance,
	risk: isNumber,
	mayOpen: orAbsent(isFlag),
	quantity: orAbsent(isOrdinal),
	ends: orAbsent(isOf<NonNullable<Job['ends']>>({ start: orAbsent(isEndFit), far: orAbsent(isEndFit) })),
	checks: isList(isCheck),
	notes: isText,
	bentAs: orAbsent(isOf<BentAs>({ mirror: isFlag, from: isEnd })),
});
