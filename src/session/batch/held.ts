import { marksApart } from '../../tube/marks-apart.ts';
import { growthOf, growthShown, type Start } from '../log/start.ts';

/**
 * By how much cut or marks of a piece would move at most, were they not held from the piece before but laid out by what was learned since; null
 * where the tape does not show it.
 */
export function wouldMove(start: Start): number | null {
	const off = marksApart(start.job, growthOf(start), growthShown(start));
	return off > start.job.tooling.tape ? off : null;
}
