import { dieAnswer } from './bend-die-questions.ts';
import { copeIn } from './cope-questions.ts';
import type { Draft, JobJson } from './draft.ts';
import { furtherDie } from './further-die-questions.ts';
import { OWN } from './question.ts';
import { fileFieldOf } from './questions.ts';

/** The answer that the open question has in the file already, as `answer` takes it; null where there is none. */
export function currentAnswer(draft: Draft): string | null {
	const { at, item, put, file, part } = draft;
	const bend = put === 'instead' ? file.shape?.bends?.[item] : undefined;
	const point = put === 'instead' ? file.shape?.points?.[item] : undefined;
	const cope = copeIn(draft);
	switch (at) {
		case 'straight':
		case 'angle':
			return asTyped(bend?.[at]);
		case 'turn':
			return bend === undefined
				? null
				: bend.rotation === 0
					? 'same'
					: Math.abs(bend.rotation) === 180
						? 'opposite'
						: OWN;
		case 'bendDie':
			return bend === undefined ? null : dieAnswer(bend);
		case 'turnBy':
			return asTyped(bend?.rotation);
		case 'x':
		case 'y':
		case 'z':
			return asTyped(point?.['xyz'.indexOf(at)]);
		case 'endFit':
			return cope === undefined ? 'square' : 'cope';
		case 'copeOd':
			return asTyped(cope?.od);
		case 'copeAngle':
			return asTyped(cope?.angle);
		case 'copeOffset':
			return asTyped(cope?.offset);
		case 'copeTurn':
			return asTyped(cope?.turn);
		case 'mayOpen':
			return file.mayOpen === false ? 'no' : 'yes';
		case 'dieFigure':
			return asTyped(furtherDie(file, part.die!)[part.figure!]);
		case 'dieCalled':
			return part.die!;
		case 'field':
			return asTyped(fieldOf(file, draft.field));
		default:
			return asTyped(fieldOf(file, fileFieldOf(at) ?? ''));
	}
}

/** What stands at `group.key`, or at `key` alone. */
export function fieldOf(file: JobJson, field: string): unknown {
	const [group, key] = field.split('.') as [keyof JobJson, string?];
	const value = file[group];
	return key === undefined ? value : (value as Record<string, unknown> | undefined)?.[key];
}

/** A material by its figures cannot be given in one answer. */
function asTyped(value: unknown): string | null {
	return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
}
