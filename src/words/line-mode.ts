import type { Output } from '../session/protocol/notes.ts';
import { cautionWords } from './caution.ts';
import { includesWords } from './checks.ts';
import { cutOffWords, finishWords } from './finish.ts';
import { lastBendMendsWords } from './last-bend-mends.ts';
import type { Wording } from './lengths.ts';
import { reasonWords } from './reason.ts';
import { withText } from './warnings.ts';

/** What the session puts out as the line mode prints it: beside each fact the sentence made of it. */
export function asLine(output: Output, style: Wording): object {
	if ('note' in output) {
		switch (output.note) {
			case 'warnings':
				return { ...output, warnings: output.warnings.map((each) => withText(each, style)) };
			case 'corrected':
				return output.mend
					? { ...output, mend: { ...output.mend, says: lastBendMendsWords(output.mend, style) } }
					: output;
			case 'refused':
				return withWhy(output, style);
			case 'done':
				return {
					...output,
					cuts: output.cuts.map((cut) => ({ ...cut, words: cutOffWords(cut, style) })),
					finish: output.finish.map((fact) => finishWords(fact, style)),
				};
			default:
				return output;
		}
	}
	switch (output.ask) {
		case 'set':
			return { ...output, cautions: output.cautions.map((fact) => cautionWords(fact, style)) };
		case 'measure': {
			const { cautions, reason, ...rest } = output;
			return {
				...rest,
				...(reason.length > 0 ? { why: reasonWords(reason, style), reason } : {}),
				...(cautions ? { cautions: cautions.map((fact) => cautionWords(fact, style)) } : {}),
			};
		}
		case 'check': {
			const { includes, ...rest } = output;
			return {
				...rest,
				...(includes === undefined ? {} : { includes: includesWords(includes, output.expect.value, style) }),
			};
		}
		default:
			return withWhy(output, style);
	}
}

function withWhy<T extends Extract<Output, { reason: unknown }>>({ reason, ...rest }: T, style: Wording): object {
	return { ...rest, why: reasonWords(reason, style), reason };
}
