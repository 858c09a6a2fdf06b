import type { PageName } from '../paper/page-size.ts';
import { PDF } from '../words/usage/paper.ts';
import { UsageError } from './usage-error.ts';

/** The sheet that `--page` names; null: none is given. @throws UsageError for one that there is not */
export function pageIn(given: string | null, names: readonly string[]): PageName | null {
	if (given === null || given === 'letter' || given === 'a4') return given;
	throw new UsageError(PDF.page(given, names));
}
