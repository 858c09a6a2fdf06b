import { describe, expect, it } from 'vitest';
import { answerDraft } from '../../../src/job/draft/answer.ts';
import { currentAnswer } from '../../../src/job/draft/current.ts';
import { type Draft, draftOf } from '../../../src/job/draft/draft.ts';
import type { FormShop } from '../../../src/job/draft/question.ts';
import { questionOf } from '../../../src/job/draft/questions.ts';
import { readJob } from '../../../src/job/read.ts';
import { optionWords } from '../../../src/words/job-form/option-words.ts';

/** Two dies of the job's bender are kept, one of them without its radius, and one of another's. */
const SHOP: FormShop = {
	lookup: (bender, die) => (bender === 'quay' && die === 'foot' ? { clr: 4, clamp: 2 } : undefined),
	dies: [
		{ bender: 'quay', die: 'foot', clr: 4, units: 'in' },
		{ bender: 'quay', die: 'bare', clr: null, units: 'in' },
		{ bender: 'barge', die: 'other', clr: null, units: 'in' },
	],
};

/** The die of bend 2 of a rail asked for. */
const asking = (dies?: object, die?: string): Draft => ({
	...draftOf({
		pullbook: 'job/1',
		name: 'Ramp guard',
		units: 'in',
		tube: { material: '1020-dom', od: 1.25, wall: 0.095 },
		tooling: { bender: 'quay', die: 'rail', clr: 6, ...(dies && { dies }) },
		shape: {
			bends: [
				{ straight: 12, angle: 30, rotation: 0 },
				{ straight: 15, angle: 40, rotation: 180, ...(die && { die }) },
			],
			last: 14,
		},
	}),
	at: 'bendDie',
	item: 1,
	put: 'instead',
});

function following(draft: Draft, ...answers: readonly string[]): Draft {
	return answers.reduce((now, text) => {
		const next = answerDraft(now, text, SHOP);
		if ('faults' in next) throw new Error(`"${text}" at ${now.at}: ${JSON.stringify(next.faults)}`);
		return next.draft;
	}, draft);
}

const options = (draft: Draft) => questionOf(draft, SHOP).options!.map(({ is }) => optionWords(is));

/** What the file then says of the dies, having been read as a job. */
function told({ file, at }: Draft) {
	expect(at).toBe('overview');
	const read = readJob(file, SHOP.lookup);
	if ('faults' in read) throw new Error(JSON.stringify(read.faults));
	return { of: file.shape?.bends?.map(({ die }) => die), dies: file.tooling?.dies, read: read.job.tooling.dies };
}

describe("a bend's die in the form", () => {
	it("is the job's, a further one of the job, one kept with its bender, or a new one", () => {
		expect(options(asking({ heel: { clr: 3 } }))).toEqual([
			"the job's die: rail",
			'die heel',
			'die foot (radius 4 in)',
			'die bare',
			'another: by its name and radius',
		]);
	});

	it('kept with its radius is on the job at once', () => {
		const { of, dies, read } = told(following(asking(), 'die:foot'));
		expect([of, dies]).toEqual([[undefined, 'foot'], { foot: {} }]);
		expect(read?.foot).toMatchObject({ clr: 4, clamp: 2 });
	});

	it.each([
		['kept without a radius', ['die:bare', '3 1/2'], { bare: { clr: '3 1/2' } }],
		['that is new', ['own', 'heel', '3'], { heel: { clr: 3 } }],
	])('%s is asked for its radius', (_, answers, dies) => {
		expect(told(following(asking(), ...answers))).toMatchObject({ of: [undefined, Object.keys(dies)[0]], dies });
	});

	it('known to the job keeps its figures', () => {
		const heel = { clr: 3, clamp: 2 };
		expect(told(following(asking({ heel }), 'die:heel'))).toMatchObject({ of: [undefined, 'heel'], dies: { heel } });
	});

	it("goes back to the job's, and the form says which it is", () => {
		const before = asking({ heel: { clr: 3 } }, 'heel');
		expect(currentAnswer(before)).toBe('die:heel');
		const after = following(before, 'job');
		expect(told(after).of).toEqual([undefined, undefined]);
		expect(currentAnswer({ ...after, at: 'bendDie' })).toBe('job');
	});

	it("cannot be a new one of the job's own die's name, or tighter than the tube", () => {
		expect(answerDraft(following(asking(), 'own'), 'rail', SHOP)).toMatchObject({
			faults: [{ right: { code: 'other-die-name' } }],
		});
		expect(answerDraft(following(asking(), 'own', 'heel'), '1/4', SHOP)).toMatchObject({
			faults: [{ right: { code: 'radius-at-least' } }],
		});
	});
});
