import type { CheckKind } from '../../session/protocol/kinds.ts';
import { CHECK_KINDS, CHECK_PARTS, checkJson } from './check-questions.ts';
import { bendsIn, type QuestionPlace } from './draft.ts';
import { withKey, withPart } from './put.ts';
import { choiceQuestion, type FormQuestion, option, question } from './question.ts';

/** One check, asked part by part. */
export const CHECK_QUESTIONS = {
	checkKind: {
		groups: ['check'],
		asks: () => choiceQuestion({ code: 'checkKind' }, CHECK_KINDS),
		takesText: (draft, text) => withPart(draft, { check: { kind: text as CheckKind, values: [] } }, 'checkPart'),
	},
	checkPart: {
		groups: ['check'],
		asks: (draft) => {
			const { kind, values } = draft.part.check!;
			const part = CHECK_PARTS[kind][values.length]!;
			const options = part.choices(bendsIn(draft)).map(({ is, value }) => ({ is, value: JSON.stringify(value) }));
			return choiceQuestion({ code: 'checkPart', part: part.part }, options);
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
		groups: ['check'],
		asks: ({ part }) => {
			const kind = part.check!.kind;
			return question(
				{ code: 'checkTolerance', kind },
				kind === 'angle' ? 'angle' : kind === 'ovality' ? 'number' : 'length',
				option('as-usual'),
			);
		},
		takesNumber(draft, value) {
			const check = { ...draft.part.check!, ...(value === undefined ? {} : { tolerance: value }) };
			return withPart(draft, { check }, 'checkName');
		},
	},
	checkName: {
		groups: ['check'],
		asks: ({ part, item }) => {
			const usual = `${part.check!.kind} ${item + 1}`;
			return question({ code: 'checkName', usual }, 'text', { is: { code: 'named', name: usual }, value: '' });
		},
		takesText(draft, text) {
			const { kind, values, tolerance } = draft.part.check!;
			const name = text || `${kind} ${draft.item + 1}`;
			const check = checkJson(kind, values, { name, ...(tolerance === undefined ? {} : { tolerance }) });
			const checks = (draft.file.checks ?? []).toSpliced(draft.item, 1, check);
			const file = withKey(draft.file, 'checks', checks);
			return { draft: { ...draft, file, part: {}, at: 'overview' }, place: `checks[${draft.item}]` };
		},
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
