import { savedJobWords } from '../../words/screen/home.ts';
import type { Message } from '../session/session-state.ts';
import type { HomePort } from './home-port.ts';
import { type HomeState, turnedTo } from './home-state.ts';
import type { HomePage, HomeStep } from './home-view.ts';

/** The steps that this does: those of a job that is written on the screen and those of the benders. */
export type WorkshopStep = Extract<
	HomeStep,
	{ step: 'form' | 'formShown' | 'formAnswer' | 'formBack' | 'formAside' | 'formSave' | 'bench' | 'shop' }
>;

/** What has come of such a step: a state to be shown, or the home page as the disk now has it. */
export type Done = { home: HomeState } | { over: Message | null; saved?: string };

/** Does what writing a job or setting up a bender asks for. What draws those pages is loaded when first wanted. */
export class Workshop {
	constructor(private readonly port: HomePort) {}

	/** @throws what the disk said, with its `exitCode` */
	async step(home: HomeState, step: WorkshopStep): Promise<Done> {
		return step.step === 'bench' || step.step === 'shop' ? this.bench(home, step) : this.form(home, step);
	}

	/** The same at once where nothing needs loading: keys must not wait for a promise between two questions. */
	atOnce(home: HomeState, step: WorkshopStep): Done | null {
		const { page } = home;
		if (
			page.page === 'form' &&
			this.forms !== null &&
			step.step !== 'bench' &&
			step.step !== 'shop' &&
			step.step !== 'form'
		) {
			return this.formNow(this.forms, home, page, step);
		}
		if (page.page === 'bench' && step.step === 'bench') {
			return { home: turnedTo(home, { ...page, at: step.at, benders: this.port.workshop.benders() }) };
		}
		return null;
	}

	private forms: typeof import('../job-form/index.ts') | null = null;

	private async bench(home: HomeState, step: Extract<WorkshopStep, { step: 'bench' | 'shop' }>): Promise<Done> {
		const { workshop } = this.port;
		const { benchView } = await import('../benders/bench-view.ts');
		if (step.step === 'shop') await workshop.change(step.change);
		const problems = workshop.problems();
		const said = step.step === 'shop' ? [step.said, ...problems] : problems;
		const message: Message | null =
			said.length === 0 ? null : { kind: step.step === 'shop' ? 'said' : 'wrong', text: said.join(' ') };
		const at = step.step === 'shop' ? step.next : step.at;
		return { home: turnedTo(home, { page: 'bench', at, benders: workshop.benders(), view: benchView }, message) };
	}

	private async form(home: HomeState, step: Exclude<WorkshopStep, { step: 'bench' | 'shop' }>): Promise<Done> {
		this.forms ??= await import('../job-form/index.ts');
		const { newForm, formOf, shopOf, formView } = this.forms;
		if (step.step !== 'form') {
			return home.page.page === 'form' ? this.formNow(this.forms, home, home.page, step) : { home };
		}
		const shop = shopOf(this.port.workshop);
		const form =
			step.path === null ? newForm(shop) : formOf(shop, this.port.workshop.jobFile(step.path), step.path, step.copy);
		return { home: turnedTo(home, { page: 'form', form, view: formView }) };
	}

	private formNow(
		forms: typeof import('../job-form/index.ts'),
		home: HomeState,
		page: Extract<HomePage, { page: 'form' }>,
		step: Exclude<WorkshopStep, { step: 'bench' | 'shop' }>,
	): Done {
		const { form } = page;
		switch (step.step) {
			case 'form':
				return { home };
			case 'formShown':
				return { home: turnedTo(home, { ...page, form: step.form }) };
			case 'formAside':
				return { home: turnedTo(home, { ...page, form: { ...form, aside: step.aside } }) };
			case 'formAnswer': {
				const { form: next, message } = forms.answeredForm(form, step.text);
				// What was refused stays in the field, to be mended.
				return { home: message === null ? turnedTo(home, { ...page, form: next }) : { ...home, message } };
			}
			case 'formBack': {
				const before = forms.backInForm(form);
				if (before !== null) return { home: turnedTo(home, { ...page, form: before }) };
				return form.changed
					? { home: turnedTo(home, { ...page, form: { ...form, aside: { aside: 'leave' } } }) }
					: { over: null };
			}
			case 'formSave':
				return this.save(forms, home, page, step);
		}
	}

	private save(
		{ fileText, draftIn }: typeof import('../job-form/index.ts'),
		home: HomeState,
		page: Extract<HomePage, { page: 'form' }>,
		{ form, to, over }: Extract<WorkshopStep, { step: 'formSave' }>,
	): Done {
		const { workshop } = this.port;
		const path = 'path' in to ? to.path : workshop.jobPath(to.file);
		const { file } = draftIn(form);
		if (!workshop.saveJob(path, fileText(file), over)) {
			return { home: turnedTo(home, { ...page, form: { ...form, aside: { aside: 'taken', path } } }) };
		}
		return { over: { kind: 'said', text: savedJobWords(path) }, saved: path };
	}
}
