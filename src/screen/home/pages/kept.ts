import { keptWords } from '../../../words/screen/home.ts';
import type { Choice } from '../../shell/prompt.ts';
import type { SessionRow } from '../home-port.ts';
import type { HomeStep } from '../home-view.ts';

/** A kept session, to be looked at. */
export function keptChoice(row: SessionRow): Choice<HomeStep> {
	return { ...keptWords(row), step: { step: 'review', id: row.id } };
}
