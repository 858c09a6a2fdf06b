import { CHECK_KINDS, CHECK_PARTS, type CheckKind, checkJson } from './check-questions.ts';
import { bendsIn, type Place } from './draft.ts';
import { withKey, withPart } from './put.ts';
import { type Asked, choice, question } from './question.ts';

/** One check, asked part by part. */
export const CHECK_QUESTIONS = {
	checkKind: {
		title: 'A check',
		groups: ['check'],
		asks: () => choice('What is to be checked', CHECK_KINDS),
		takesText: (draft, text) => withPart(draft, { check: { kind: text as CheckKind, values: [] } }, 'checkPart'),
	},
	checkPart: {
		title: 'A check',
		groups: ['check'],
		asks: (draft) => {
			const { kind, values } = draft.part.check!;
			const part = CHECK_PARTS[kind][values.length]!;
			const options = part.choices(bendsIn(draft)).map(({ label, value }) => ({ label, value: JSON.stringify(value) }));
			return choice(part.label, options);
		},
		takesText(draft, text) {
			const { kind, values } = draft.part.check!;
			const all = [...values, JSON.parse(text)];
			return withPart(
				draft,
				{ check: { kind, values: all } },
				all.length < CHECK_PARTS[kind].length ? 'checkPart' : 'checkTolerance',
			);
		},
	},
	checkTolerance: {
		title: 'A check',
		groups: ['check'],
		asks: ({ part }) => {
			const kind = part.check!.kind;
			return question(
				kind === 'angle' ? 'How far it may be off, degrees' : 'How far it may be off',
				kind === 'angle' ? 'angle' : kind === 'ovality' ? 'number' : 'length',
				{ usual: { label: 'as usual', value: '' } },
			);
		},
		takesNumber(draft, value) {
			const check = { ...draft.part.check!, ...(value === undefined ? {} : { tolerance: value }) };
			return withPart(draft, { check }, 'checkName');
		},
	},
	checkName: {
		title: 'A check',
		groups: ['check'],
		asks: ({ part, item }) =>
			question('What the check is called', 'text', {
				usual: { label: `${part.check!.kind} ${item + 1}`, value: '' },
				help: `Enter alone: ${part.check!.kind} ${item + 1}.`,
			}),
		takesText(draft, text) {
			const { kind, values, tolerance } = draft.part.check!;
			const name = text || `${kind} ${draft.item + 1}`;
			const check = checkJson(kind, values, { name, ...(tolerance === undefined ? {} : { tolerance }) });
			const checks = (draft.file.checks ?? []).toSpliced(draft.item, 1, check);
			const file = withKey(draft.file, 'checks', checks);
			return { draft: { ...draft, file, part: {}, at: 'overview' }, place: `checks[${draft.item}]` };
		},
	},
} satisfies Partial<Record<Place, Asked>>;
