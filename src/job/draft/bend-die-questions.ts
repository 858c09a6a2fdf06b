import type { Units } from '../../units/units.ts';
import { type BendJson, type DiesJson, type Draft, type FileValue, type QuestionPlace, unitsOf } from './draft.ts';
import { furtherDie, furtherDies } from './further-die-questions.ts';
import { put, withKey, withPart } from './put.ts';
import {
	choiceQuestion,
	type DraftTaken,
	type FormQuestion,
	type FormShop,
	type Option,
	OWN,
	option,
	question,
} from './question.ts';

/** The answer that stands for the job's own die. */
const JOBS_OWN = 'job';
/** Before the name of a further die. */
const DIE_PREFIX = 'die:';

/** A bend on another die than the job's: one that the job knows, one that is kept, or a new one by its name and radius. */
export const BEND_DIE_QUESTIONS = {
	bendDie: {
		groups: ['bendDie'],
		asks: (draft, shop) =>
			choiceQuestion({ code: 'bendDie', bend: draft.item + 1 }, [
				{ is: { code: 'jobs-die', name: draft.file.tooling?.die }, value: JOBS_OWN },
				...furtherDieOptions(draft, shop),
				option('other-die-named', OWN),
			]),
		takesText(draft, text, { lookup }) {
			if (text === OWN) return withPart(draft, {}, 'bendDieName');
			if (text === JOBS_OWN) return withBendOnDie(draft, undefined, 'overview');
			const name = text.slice(DIE_PREFIX.length);
			const bender = draft.file.tooling?.bender ?? 'shop';
			const isKnown = name in furtherDiesOf(draft) || lookup(bender, name, unitsOf(draft))?.clr !== undefined;
			return withBendOnDie(draft, name, isKnown ? 'overview' : 'bendDieClr');
		},
	},
	bendDieName: {
		groups: ['bendDie'],
		asks: () => question({ code: 'bendDieName' }, 'text'),
		takesText: (draft, text) => withBendOnDie(draft, text, 'bendDieClr'),
	},
	bendDieClr: {
		groups: ['bendDie'],
		asks: () => question({ code: 'bendDieClr' }, 'length'),
		takesNumber(draft, value) {
			const name = draft.part.die!;
			const die = { ...furtherDie(draft.file, name), clr: value as FileValue };
			return put(draft, 'tooling.dies', { ...furtherDiesOf(draft), [name]: die }, 'overview');
		},
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;

/** The answer that the bend's die stands for, as `bendDie` takes it. */
export const dieAnswer = ({ die }: BendJson): string => (die === undefined ? JOBS_OWN : `${DIE_PREFIX}${die}`);

const furtherDiesOf = ({ file }: Draft): DiesJson => furtherDies(file);

/** The job's further dies, then what else is kept with its bender. */
function furtherDieOptions(draft: Draft, { dies }: FormShop): Option[] {
	const { tooling } = draft.file;
	const offered = (die: string, clr: number | null, units: Units): Option => ({
		is: { code: 'further-die', die, clr, units },
		value: `${DIE_PREFIX}${die}`,
	});
	const kept = dies.filter(
		({ bender, die }) =>
			bender === (tooling?.bender ?? 'shop') && die !== tooling?.die && !(die in furtherDiesOf(draft)),
	);
	return [
		...Object.keys(furtherDiesOf(draft)).map((name) => offered(name, null, unitsOf(draft))),
		...kept.map(({ die, clr, units }) => offered(die, clr, units)),
	];
}

/** The draft with the bend in hand on that die (undefined: the job's), which the job knows from now on. */
function withBendOnDie(draft: Draft, die: string | undefined, at: QuestionPlace): DraftTaken {
	const { shape = {} } = draft.file;
	const bends = (shape.bends ?? []).map((bend, i) => (i === draft.item ? withKey(bend, 'die', die) : bend));
	const file = { ...draft.file, shape: { ...shape, bends } };
	const next = { ...draft, file, part: { ...draft.part, ...(die !== undefined && { die }) }, at };
	if (die === undefined || die in furtherDiesOf(draft)) return { draft: next, place: `shape.bends[${draft.item}].die` };
	return put(next, 'tooling.dies', { ...furtherDiesOf(draft), [die]: {} }, at);
}
