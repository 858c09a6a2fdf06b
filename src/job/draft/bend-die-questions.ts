import { TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { capital } from '../../units/format.ts';
import { type BendJson, type DiesJson, type Draft, type Place, unitsOf, type Value } from './draft.ts';
import { put, withKey, withPart } from './put.ts';
import { type Asked, choice, type Option, OWN, question, type Shop, type Taken } from './question.ts';

/** The answer that stands for the job's own die. */
const JOBS = 'job';
/** Before the name of a further die. */
const NAMED = 'die:';

/** A bend on another die than the job's: one that the job knows, one that is kept, or a new one by its name and radius. */
export const BEND_DIE_QUESTIONS = {
	bendDie: {
		title: 'The shape',
		groups: ['bendDie'],
		asks: (draft, shop) =>
			choice(`Bend ${draft.item + 1} is made on`, [
				{ label: `the job's die${nameBehind(draft.file.tooling?.die)}`, value: JOBS },
				...further(draft, shop),
				{ label: 'another: by its name and radius', value: OWN },
			]),
		takesText(draft, text, { lookup }) {
			if (text === OWN) return withPart(draft, {}, 'bendDieName');
			if (text === JOBS) return onDie(draft, undefined, 'overview');
			const name = text.slice(NAMED.length);
			const bender = draft.file.tooling?.bender ?? 'shop';
			const isKnown = name in diesOf(draft) || lookup(bender, name, unitsOf(draft))?.clr !== undefined;
			return onDie(draft, name, isKnown ? 'overview' : 'bendDieClr');
		},
	},
	bendDieName: {
		title: 'The shape',
		groups: ['bendDie'],
		asks: () => question('What the die is called', 'text', { help: 'Springback is learned under its name.' }),
		takesText: (draft, text) => onDie(draft, text, 'bendDieClr'),
	},
	bendDieClr: {
		title: 'The shape',
		groups: ['bendDie'],
		asks: () =>
			question(capital(TOOLING_FIELDS.clr.says), 'length', {
				help: "The clamp's need, and all else of this die, is as kept for it, or as the job's.",
			}),
		takesNumber(draft, value) {
			const name = draft.part.die!;
			const die = { ...diesOf(draft)[name], clr: value as Value };
			return put(draft, 'tooling.dies', { ...diesOf(draft), [name]: die }, 'overview');
		},
	},
} satisfies Partial<Record<Place, Asked>>;

/** The answer that the bend's die stands for, as `bendDie` takes it. */
export const dieAnswer = ({ die }: BendJson): string => (die === undefined ? JOBS : `${NAMED}${die}`);

const diesOf = ({ file }: Draft): DiesJson => file.tooling?.dies ?? {};

const nameBehind = (name: string | undefined): string => (name === undefined ? '' : `: ${name}`);

/** The job's further dies, then what else is kept with its bender. */
function further(draft: Draft, { dies }: Shop): Option[] {
	const { tooling } = draft.file;
	const known = Object.keys(diesOf(draft)).map((name) => ({ label: `die ${name}`, value: `${NAMED}${name}` }));
	const kept = dies.filter(
		({ bender, die }) => bender === (tooling?.bender ?? 'shop') && die !== tooling?.die && !(die in diesOf(draft)),
	);
	return [
		...known,
		...kept.map(({ die, says }) => ({
			label: `die ${die}${says === '' ? '' : ` (${says})`}`,
			value: `${NAMED}${die}`,
		})),
	];
}

/** The draft with the bend in hand on that die (undefined: the job's), which the job knows from now on. */
function onDie(draft: Draft, die: string | undefined, at: Place): Taken {
	const { shape = {} } = draft.file;
	const bends = (shape.bends ?? []).map((bend, i) => (i === draft.item ? withKey(bend, 'die', die) : bend));
	const file = { ...draft.file, shape: { ...shape, bends } };
	const next = { ...draft, file, part: { ...draft.part, ...(die !== undefined && { die }) }, at };
	if (die === undefined || die in diesOf(draft)) return { draft: next, place: `shape.bends[${draft.item}].die` };
	return put(next, 'tooling.dies', { ...diesOf(draft), [die]: {} }, at);
}
