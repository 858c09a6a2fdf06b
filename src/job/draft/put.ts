import type { Draft, JobJson, QuestionPlace, Unfinished } from './draft.ts';
import type { DraftTaken } from './question.ts';

/** The object with the key, or without it where there is no value. */
export function withKey<T extends object>(object: T | undefined, key: string, value: unknown): T {
	const { [key]: _, ...rest } = { ...object } as Record<string, unknown>;
	return (value === undefined ? rest : { ...rest, [key]: value }) as T;
}

/** The file with a value at `group.key`, or at `key` alone. */
function withField(file: JobJson, field: string, value: unknown): JobJson {
	const [group, key] = field.split('.') as [keyof JobJson, string?];
	if (key === undefined) return withKey(file, group, value);
	const inner = withKey(file[group] as object | undefined, key, value);
	return withKey(file, group, Object.keys(inner).length === 0 ? undefined : inner);
}

/** The draft with a value at a field of the file (undefined: without it), and the next question open. */
export function put(draft: Draft, field: string, value: unknown, at: QuestionPlace): DraftTaken {
	return { draft: { ...draft, file: withField(draft.file, field, value), at }, place: field };
}

/** The draft with more known of what is not whole yet, and the next question open. `place`: whose faults count against the answer. */
export function withPart(draft: Draft, part: Unfinished, at: QuestionPlace, place: string | null = null): DraftTaken {
	return { draft: { ...draft, part: { ...draft.part, ...part }, at }, place };
}
