import type { CheckKind } from '../../session/protocol/kinds.ts';
import { CHECK_KINDS, CHECK_PARTS, checkJson } from './check-questions.ts';
import { bendsIn, type Draft, type JobJson, type QuestionPlace } from './draft.ts';
import { withKey, withPart } from './put.ts';
import { choiceQuestion, type FormQuestion, option, question } from './question.ts';

const withCheckAt = ({ file, item }: Draft, check: object): JobJson =>
	withKey(file, 'checks', (file.checks ?? []).toSpliced(item, 1, check));

/** Where the two straights of a kind that measures between two stand in its check. */
const TWO_STRAIGHTS: Partial<Record<CheckKind, string>> = { angle: 'between', out: 'plane', width: 'between' };

/** Whether two straights suit each other is told once both are known, not when the check is whole: what it lacks has faults in other places. */
function straightsTried(
	draft: Draft,
	kind: CheckKind,
	values: readonly unknown[],
): { place: string; tried: JobJson } | object {
	const key = TWO_STRAIGHTS[kind];
	if (key === undefined || values.length !== 2) return {};
	const check = checkJson(kind, values, { name: kind });
	return { place: `checks[${draft.item}].${kind}.${key}`, tried: withCheckAt(draft, check) };
}

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
			const next = all.length < CHECK_PARTS[kind].length ? 'checkPart' : 'checkTolerance';
			return { ...withPart(draft, { check: { kind, values: all } }, next), ...straightsTried(draft, kind, all) };
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
			const file = withCheckAt(
				draft,
				checkJson(kind, values, { name, ...(tolerance === undefined ? {} : { tolerance }) }),
			);
			return { draft: { ...draft, file, part: {}, at: 'overview' }, place: `checks[${draft.item}]` };
		},
	},
} satisfies Partial<Record<QuestionPlace, FormQuestion>>;
