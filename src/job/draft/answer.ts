import { type Fault, show } from '../fault.ts';
import { readJob } from '../read.ts';
import { CHECK_PARTS, type CheckKind, checkJson } from './check-questions.ts';
import { bendsIn, type Draft, FIELD_OF, type JobJson, type Part, type Place, unitsOf, type Value } from './draft.ts';
import { OWN, type Question, questionOf, type Shop } from './questions.ts';
import { addBend, addOffset, addPoint, partBend } from './shape-parts.ts';
import { lengthOf, valueAt } from './value.ts';

/** A draft after an answer, with the place in the file whose faults count against the answer; or the fault that it has by itself. */
type Taken = { draft: Draft; place: string | null } | { fault: Fault };

/**
 * Takes the answer to the open question: a number or a text as typed, an option's value; empty: left out, where that is usual. Gives the
 * draft with the next question open, or every fault that a job file would have there.
 */
export function answer(draft: Draft, text: string, shop: Shop): { draft: Draft } | { faults: readonly Fault[] } {
	const taken = take(draft, text.trim(), shop);
	if ('fault' in taken) return { faults: [taken.fault] };
	const { draft: next, place } = taken;
	const faults = place === null ? [] : faultsAt(place, partBend(next), shop);
	return faults.length > 0 ? { faults } : { draft: onward(draft, next) };
}

/** The faults of a draft at that place, those left out that only say that something is still missing. */
function faultsAt(place: string, file: JobJson, { lookup }: Shop): Fault[] {
	const read = readJob(file, lookup);
	if (!('faults' in read)) return [];
	return read.faults.filter(
		({ at, found }) =>
			found !== 'nothing' && (at === place || at.startsWith(`${place}.`) || at.startsWith(`${place}[`)),
	);
}

/** A question asked again leads back to the overview, as soon as the questions that belong to it are answered. */
function onward(before: Draft, next: Draft): Draft {
	if (!before.whole || related(before.at, next.at)) return next;
	return { ...next, at: 'overview', part: {} };
}

const RELATED: readonly (readonly Place[])[] = [
	['material', 'materialName', 'yield', 'modulus'],
	['die', 'bender', 'dieName', 'clr'],
	['shape', 'piece', 'straight', 'angle', 'turn', 'turnBy', 'rise', 'run', 'last'],
	['shape', 'flat', 'x', 'y', 'z', 'morePoints'],
	['checkKind', 'checkPart', 'checkTolerance', 'checkName'],
];

function related(a: Place, b: Place): boolean {
	return RELATED.some((group) => group.includes(a) && group.includes(b));
}

function take(draft: Draft, text: string, shop: Shop): Taken {
	const question = questionOf(draft, shop);
	const unfit = unfitFor(question, text, draft);
	if (unfit !== null) return { fault: unfit };
	if (question.kind === 'choice' || question.kind === 'text') return WORDS[draft.at]!(draft, text, shop);
	if (text === '') return NUMBERS[draft.at]!(draft, undefined, shop);
	const read = valueAt(placeOf(draft), text, question.kind, unitsOf(draft));
	return 'fault' in read ? read : NUMBERS[draft.at]!(draft, read.value, shop);
}

/** What cannot be an answer at all. */
function unfitFor({ kind, options, usual, label }: Question, text: string, draft: Draft): Fault | null {
	const at = placeOf(draft);
	if (text === '' && usual?.value !== '') return { at, found: 'nothing', right: label };
	if (kind === 'choice' && !options?.some(({ value }) => value === text))
		return { at, found: show(text), right: 'one of the numbers in the list' };
	return null;
}

/** The place of the open question in the job file. */
function placeOf({ at, item, field }: Draft): string {
	return (
		FIELD_OF[at] ?? (at === 'field' ? field : at === 'x' || at === 'y' || at === 'z' ? `shape.points[${item}]` : 'job')
	);
}

/** The object with the key, or without it where there is no value. */
function withKey<T extends object>(object: T | undefined, key: string, value: unknown): T {
	const { [key]: _, ...rest } = { ...object } as Record<string, unknown>;
	return (value === undefined ? rest : { ...rest, [key]: value }) as T;
}

/** The file with a value at `group.key`, or at `key` alone. */
function withField(file: JobJson, field: string, value: unknown): JobJson {
	const [group, key] = field.split('.') as [keyof JobJson, string?];
	if (key === undefined) return withKey(file, group, value);
	const inner = withKey(file[group] as object | undefined, key, value);
	return withKey(file, group, Object.keys(inner).length === 0 ? undefined : inner);
}

function put(draft: Draft, field: string, value: unknown, at: Place): Taken {
	return { draft: { ...draft, file: withField(draft.file, field, value), at }, place: field };
}

function withPart(draft: Draft, part: Part, at: Place, place: string | null = null): Taken {
	return { draft: { ...draft, part: { ...draft.part, ...part }, at }, place };
}

type TakeWord = (draft: Draft, text: string, shop: Shop) => Taken;

const WORDS: Partial<Record<Place, TakeWord>> = {
	name: (draft, text) => put(draft, 'name', text, 'units'),
	units: (draft, text) => put(draft, 'units', text, 'material'),
	material(draft, text) {
		if (text === OWN) return withPart(draft, { material: {} }, 'materialName');
		return put(draft, 'tube.material', text, 'od');
	},
	materialName: (draft, text) => withPart(draft, { material: { name: text } }, 'yield'),
	die(draft, text, { lookup }) {
		if (text === OWN) return put(draft, 'tooling', undefined, 'bender');
		const [bender, die] = JSON.parse(text) as [string, string];
		const known = lookup(bender, die, unitsOf(draft))?.clr !== undefined;
		const taken = put(draft, 'tooling', { bender, die }, known ? 'shape' : 'clr');
		return 'draft' in taken ? { ...taken, place: 'tooling.clr' } : taken;
	},
	bender: (draft, text) => put(draft, 'tooling.bender', text || undefined, 'dieName'),
	dieName: (draft, text) => put(draft, 'tooling.die', text || undefined, 'clr'),
	shape(draft, text) {
		const points = text === 'points';
		const file = withKey(draft.file, 'shape', points ? { points: [] } : { bends: [] });
		return { draft: { ...draft, file, item: 0, put: 'add', part: {}, at: points ? 'flat' : 'piece' }, place: null };
	},
	piece(draft, text) {
		if (text === 'last') return { draft: { ...draft, part: {}, at: 'last' }, place: null };
		const fresh: Draft = { ...draft, item: bendsIn(draft), put: 'add', part: {} };
		return withPart(fresh, { piece: text as Part['piece'] & string }, 'straight');
	},
	turn(draft, text, shop) {
		if (text === OWN) return withPart(draft, {}, 'turnBy');
		return bent(draft, text === 'same' ? 0 : 180, shop);
	},
	flat: (draft, text) => ({
		draft: { ...draft, flat: text === 'flat', item: 0, put: 'add', part: {}, at: 'x' },
		place: null,
	}),
	morePoints: (draft, text) => ({
		draft: {
			...draft,
			item: draft.file.shape?.points?.length ?? 0,
			put: 'add',
			part: {},
			at: text === 'more' ? 'x' : 'trimStart',
		},
		place: text === 'more' ? null : 'shape.points',
	}),
	checkKind: (draft, text) => withPart(draft, { check: { kind: text as CheckKind, values: [] } }, 'checkPart'),
	checkPart(draft, text) {
		const { kind, values } = draft.part.check!;
		const all = [...values, JSON.parse(text)];
		return withPart(
			draft,
			{ check: { kind, values: all } },
			all.length < CHECK_PARTS[kind].length ? 'checkPart' : 'checkTolerance',
		);
	},
	checkName(draft, text) {
		const { kind, values, tolerance } = draft.part.check!;
		const name = text || `${kind} ${draft.item + 1}`;
		const check = checkJson(kind, values, { name, ...(tolerance === undefined ? {} : { tolerance }) });
		const checks = (draft.file.checks ?? []).toSpliced(draft.item, 1, check);
		const file = withKey(draft.file, 'checks', checks);
		return { draft: { ...draft, file, part: {}, at: 'overview' }, place: `checks[${draft.item}]` };
	},
	notes: (draft, text) => put(draft, 'notes', text || undefined, 'overview'),
};

type TakeNumber = (draft: Draft, value: Value | undefined, shop: Shop) => Taken;

const NUMBERS: Partial<Record<Place, TakeNumber>> = {
	yield: (draft, value) => withPart(draft, { material: { ...draft.part.material, yield: value as number } }, 'modulus'),
	modulus: (draft, value) => put(draft, 'tube.material', { ...draft.part.material, modulus: value }, 'od'),
	od: (draft, value) => put(draft, 'tube.od', value, 'wall'),
	wall: (draft, value) => put(draft, 'tube.wall', value, 'stock'),
	stock: (draft, value, { dies }) => put(draft, 'tube.stock', value, dies.length > 0 ? 'die' : 'bender'),
	clr: (draft, value) => put(draft, 'tooling.clr', value, 'clamp'),
	clamp: (draft, value) => put(draft, 'tooling.clamp', value, 'follow'),
	follow: (draft, value) => put(draft, 'tooling.follow', value, 'shape'),
	straight(draft, value) {
		const straight = value as Value;
		const offset = draft.part.piece !== 'bend';
		return withPart(draft, { straight }, offset ? 'rise' : 'angle', `shape.bends[${draft.item}].straight`);
	},
	rise: (draft, value) =>
		withPart(draft, { rise: lengthOf(value as Value, unitsOf(draft)) }, draft.part.piece === 'slope' ? 'angle' : 'run'),
	run: (draft, value, shop) => offsetTaken(draft, { run: lengthOf(value as Value, unitsOf(draft)) }, shop),
	angle(draft, value, shop) {
		const angle = value as number;
		if (draft.part.piece === 'slope') return offsetTaken(draft, { angle }, shop);
		const place = `shape.bends[${draft.item}].angle`;
		if (draft.item > 0) return withPart(draft, { angle }, 'turn', place);
		const first = draft.put === 'instead' ? (draft.file.shape?.bends?.[0]?.rotation ?? 0) : 0;
		return bent({ ...draft, part: { ...draft.part, angle } }, first, shop);
	},
	turnBy: (draft, value, shop) => bent(draft, value as number, shop),
	last: (draft, value) => put(draft, 'shape.last', value, 'trimStart'),
	x: (draft, value) => withPart(draft, { point: [value as Value] }, 'y'),
	y: (draft, value) => pointTaken(draft, value as Value),
	z: (draft, value) => pointTaken(draft, value as Value),
	trimStart: (draft, value) => put(draft, 'trim.start', value, 'trimEnd'),
	trimEnd: (draft, value) => {
		const taken = put(draft, 'trim.end', value, 'overview');
		return 'draft' in taken ? { ...taken, draft: { ...taken.draft, whole: true } } : taken;
	},
	checkTolerance(draft, value) {
		const check = { ...draft.part.check!, ...(value === undefined ? {} : { tolerance: value }) };
		return withPart(draft, { check }, 'checkName');
	},
	field: (draft, value) => put(draft, draft.field, value, 'overview'),
};

/** The bend in hand is whole. */
function bent(draft: Draft, rotation: number, shop: Shop): Taken {
	if (draft.part.piece !== 'bend') {
		const made = addOffset(draft, rotation, shop);
		return 'fault' in made ? made : { draft: { ...made, at: 'piece' }, place: 'shape.bends' };
	}
	const next = addBend(draft, rotation);
	return { draft: { ...next, at: draft.put === 'add' ? 'piece' : 'overview' }, place: `shape.bends[${draft.item}]` };
}

/** The offset is known but for the way that it goes, which for the first bend is no question. */
function offsetTaken(draft: Draft, part: Part, shop: Shop): Taken {
	const next = { ...draft, part: { ...draft.part, ...part } };
	// What cannot be led over is said here, not two questions later.
	const made = addOffset(next, 0, shop);
	if ('fault' in made) return made;
	return draft.item === 0 ? bent(next, 0, shop) : { draft: { ...next, at: 'turn' }, place: null };
}

function pointTaken(draft: Draft, value: Value): Taken {
	const point = [...(draft.part.point ?? []), value];
	if (point.length < (draft.flat ? 2 : 3)) return withPart(draft, { point }, 'z');
	const next = addPoint(draft, point);
	const count = next.file.shape?.points?.length ?? 0;
	if (draft.put !== 'add') return { draft: { ...next, at: 'overview' }, place: 'shape.points' };
	return count < 3
		? { draft: { ...next, item: count, at: 'x' }, place: null }
		: { draft: { ...next, at: 'morePoints' }, place: 'shape.points' };
}
