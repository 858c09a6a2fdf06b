import { wrongValue } from '../../settings/field-value.ts';
import type { KeptBender } from '../../settings/settings.ts';
import { TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { parseQuantity } from '../../units/parse.ts';
import { benderTitle, dieTitle, FIELD, FORGET } from '../../words/screen/benders.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import { fieldRightWords } from '../../words/settings.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { NotTaken } from '../shell/prompt.ts';
import { line } from '../text/line.ts';
import { type BenchPage, keptRecordOf } from './bench-page.ts';
import { benchPageOf, toBench } from './bench-usual.ts';

/** One figure that is kept of a bender or a die. */
export function fieldView(benders: readonly KeptBender[], at: Extract<BenchPage, { bench: 'field' }>): HomeView {
	const { bender, die, field } = at;
	const { units, fields } = keptRecordOf(benders, bender, die);
	const { kind } = TOOLING_FIELDS[field];
	const known = fields[field];
	const parse = (text: string) => parseQuantity(text, kind, units);
	const kept = (value: number | null): HomeStep => ({
		step: 'shop',
		change: { bender, die, changes: { units, fields: { [field]: value } } },
		next: benchPageOf(bender, die),
		said: FIELD.kept(field, value, units),
	});
	return {
		title: die === null ? benderTitle(bender) : dieTitle(die),
		prompt: {
			label: FIELD.label(field, units),
			read(text) {
				const value = parse(text);
				const right = wrongValue(field, value, units);
				if (right !== null) throw new NotTaken(text, fieldRightWords(right));
				return kept(value);
			},
			understood: (text) => FIELD.value(field, parse(text), units),
			...(known == null ? {} : { plus: { label: FORGET.plus, step: kept(null) } }),
			back: { label: KEY_SAYS.back, step: toBench(benchPageOf(bender, die)) },
			empty: FIELD.empty,
		},
		body: () => [{ rank: 0, lines: known == null ? [] : [line(FIELD.now(field, known, units))] }],
	};
}
