import type { Reason } from '../session/protocol/facts/index.ts';
import { decideWords } from './decide.ts';
import { asideWords, doubtWords, twiceWords } from './doubt.ts';
import { foreign } from './foreign.ts';
import { notSavedWords } from './journal.ts';
import type { Wording } from './lengths.ts';
import { pullWords, springbackTexts } from './pull.ts';
import { refusalWords } from './refusal.ts';

/** Why something is asked, advised or refused, as one text. */
export function reasonWords(reason: readonly Reason[], style: Wording): string {
	return reasonTexts(reason, style).join(' ');
}

/** The same a text each fact, for where not all of it has room. */
export function reasonTexts(reason: readonly Reason[], style: Wording): string[] {
	return reason.map((fact) => reasonFactWords(fact, style));
}

/** The same of a pull in two texts: what matters with the hand on the lever, and what it is known from. */
export function pullReasonTexts(reason: readonly Reason[], style: Wording): [now: string, known: string] {
	const parts = reason.map((fact) =>
		fact.code === 'springback-expected' ? springbackTexts(fact) : [reasonFactWords(fact, style), ''],
	);
	const joined = (i: number) => parts.flatMap((texts) => texts[i] || []).join(' ');
	return [joined(0), joined(1)];
}

function reasonFactWords(fact: Reason, style: Wording): string {
	switch (fact.code) {
		case 'springback-expected':
		case 'chance-over':
		case 'dial-moved':
		case 'opened-since':
		case 'dial-far-off':
		case 'stop-capped':
			return pullWords(fact);
		case 'off-the-stop':
		case 'above-the-dial':
		case 'below-the-dial':
		case 'not-expected':
		case 'not-as-made':
		case 'turn-off':
		case 'check-off':
		case 'look-at':
		case 'length-off':
		case 'readings-differ':
		case 'slip':
		case 'explained-since':
			return doubtWords(fact, style);
		case 'set-aside':
		case 'check-contradicted':
			return asideWords(fact, style);
		case 'first-measurement':
		case 'narrow-band':
		case 'many-pulls':
		case 'many-wrong':
			return twiceWords(fact);
		case 'as-logged':
			return foreign(fact.text);
		case 'not-saved':
			return notSavedWords(fact);
		case 'bend-made':
		case 'bend-inside':
		case 'bend-short':
		case 'bend-over':
		case 'pull-again':
		case 'near-enough':
		case 'next-too-far':
		case 'needed-closer':
		case 'touch-more':
		case 'fresh-set-up':
		case 'limit-reached':
		case 'left-unopened':
		case 'too-far-to-open':
		case 'opened-already':
		case 'opening-forbidden':
		case 'fits-only-opened':
		case 'go-easy-opening':
		case 'open-by':
		case 'checks-outside':
		case 'taken-as-it-is':
		case 'still-missed':
		case 'reopen-would':
		case 'nearest':
		case 'give-up':
		case 'stock-left':
		case 'measure-first':
		case 'does-not-go':
			return decideWords(fact, style);
		default:
			return refusalWords(fact, style);
	}
}
