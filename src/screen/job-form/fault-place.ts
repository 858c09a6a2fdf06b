import type { Draft, JobJson } from '../../job/draft/draft.ts';
import { isField } from '../../job/draft/field-questions.ts';
import { furtherDieAt } from '../../job/draft/further-die-questions.ts';
import { placeOfField } from '../../job/draft/questions.ts';
import { isObject } from '../../tube/as-json.ts';
import type { EndName } from '../../tube/job.ts';

const isListOf = (value: unknown, isOne: (item: unknown) => boolean) => Array.isArray(value) && value.every(isOne);

/**
 * Whether the parts of a file that has faults are of the kinds that the form works with, so that it can be mended question by question;
 * what stands in them may be anything.
 */
export function isMendable(raw: unknown): raw is JobJson {
	if (!isObject(raw)) return false;
	const { shape = {}, checks = [] } = raw;
	const parts = ['tube', 'tooling', 'trim', 'tolerance', 'ends'].map((key) => raw[key] ?? {});
	const ends = isObject(raw.ends) ? Object.values(raw.ends) : [];
	if (![...parts, shape, ...ends].every(isObject) || !isListOf(checks, isObject)) return false;
	const { bends = [], points = [] } = shape as Record<string, unknown>;
	return isListOf(bends, isObject) && isListOf(points, Array.isArray);
}

/** The question whose answer stands at a fault's place; null: there is none, the overview says what is wrong. */
export function questionAt(at: string, file: JobJson): Partial<Draft> | null {
	const item = Number(/\[(\d+)\]/.exec(at)?.[1] ?? 0);
	if (/^shape\.bends\[\d+\]\.die$/.test(at)) return { at: 'bendDie', item, put: 'instead' };
	if (/^shape\.bends\[/.test(at)) return { at: 'straight', item, put: 'instead', part: { piece: 'bend' } };
	if (at.startsWith('tooling.dies')) return furtherDieAt(at, file);
	if (/^shape\.points\[/.test(at)) return { at: 'x', item, put: 'instead' };
	if (/^checks\[/.test(at)) return { at: 'checkKind', item, put: 'instead' };
	if (/^shape(\.(bends|points))?$/.test(at)) return { at: 'shape' };
	const [, end] = /^ends\.(start|far)\b/.exec(at) ?? [];
	if (end !== undefined) return { at: 'endFit', part: { end: end as EndName } };
	if (at === 'tube') return { at: 'material' };
	if (at === 'tooling') return { at: 'clr' };
	if (isField(at)) return { at: 'field', field: at };
	const place = placeOfField(at);
	return place === undefined ? null : { at: place };
}
