import { isObject } from '../../../tube/as-json.ts';
/** Tests of the form of what is read, put together as the types are: the compiler sees that none of a type's fields is left out. */

export type Is<T> = (value: unknown) => value is T;

type Fields<T> = { readonly [K in keyof T]-?: Is<T[K]> };

export const isNumber: Is<number> = (value): value is number => typeof value === 'number' && Number.isFinite(value);
export const isCount: Is<number> = (value): value is number => Number.isSafeInteger(value) && Number(value) >= 0;
/** Counted from 1. */
export const isOrdinal: Is<number> = (value): value is number => isCount(value) && value > 0;
export const isText: Is<string> = (value): value is string => typeof value === 'string';
export const isFlag: Is<boolean> = (value): value is boolean => typeof value === 'boolean';
export const isAnything: Is<unknown> = (_): _ is unknown => true;

export const isOneOf =
	<const T>(...each: readonly T[]): Is<T> =>
	(value): value is T =>
		(each as readonly unknown[]).includes(value);

/** One of these names. */
export const isName =
	<T extends string>(names: Readonly<Record<T, true>>): Is<T> =>
	(value): value is T =>
		typeof value === 'string' && Object.hasOwn(names, value);

export const isList =
	<T>(is: Is<T>): Is<T[]> =>
	(value): value is T[] =>
		Array.isArray(value) && value.every(is);

export const isTwo =
	<T>(is: Is<T>): Is<[T, T]> =>
	(value): value is [T, T] =>
		Array.isArray(value) && value.length === 2 && value.every(is);

export const isThree =
	<T>(is: Is<T>): Is<[T, T, T]> =>
	(value): value is [T, T, T] =>
		Array.isArray(value) && value.length === 3 && value.every(is);

export const orNull =
	<T>(is: Is<T>): Is<T | null> =>
	(value): value is T | null =>
		value === null || is(value);

export const orAbsent =
	<T>(is: Is<T>): Is<T | undefined> =>
	(value): value is T | undefined =>
		value === undefined || is(value);

export const either =
	<A, B>(a: Is<A>, b: Is<B>): Is<A | B> =>
	(value): value is A | B =>
		a(value) || b(value);

/** An object of these fields; others beside them are of no account. */
export function isOf<T extends object>(fields: Fields<T>): Is<T> {
	const each = Object.entries(fields) as [string, Is<unknown>][];
	return (value): value is T =>
		isObject(value) && each.every(([name, is]) => is(Object.hasOwn(value, name) ? value[name] : undefined));
}

/** An object whose every field is so. */
export const isEachOf =
	<T>(is: Is<T>): Is<Record<string, T>> =>
	(value): value is Record<string, T> =>
		isObject(value) && Object.values(value).every(is);

/** Every form that this name stands for, without the name itself. */
type Named<T, Tag extends keyof T, Name> = T extends unknown ? (Name extends T[Tag] ? Omit<T, Tag> : never) : never;

/** Of each name the fields beside it, or a test of its own. */
export type FormsByTag<Tag extends string, T extends { readonly [K in Tag]: string }> = {
	readonly [Name in T[Tag]]: Fields<Named<T, Tag, Name>> | Is<object>;
};

/** One of several forms, told apart by the name that stands under `tag`. */
export function isByTag<Tag extends string, T extends { readonly [K in Tag]: string }>(
	tag: Tag,
	forms: FormsByTag<Tag, T>,
): Is<T> {
	const all = Object.entries<Fields<object> | Is<object>>(forms);
	const known = new Map(all.map(([name, form]) => [name, typeof form === 'function' ? form : isOf(form)]));
	return (value): value is T => isObject(value) && known.get(String(value[tag]))?.(value) === true;
}
