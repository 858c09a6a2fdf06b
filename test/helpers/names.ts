import { posix } from 'node:path';

/**
 * The names that a source file of ours declares at its top: functions, types, classes, values in small letters, and what else it exports.
 * A constant in capitals that it keeps to itself is none of them: it is read beside its number. biome sets each at the beginning of a line.
 */
export function declaredIn(source: string): string[] {
	const declarations = source.matchAll(/^(export )?(?:async )?(function|class|interface|type|const|let) (\w+)/gm);
	return [...declarations].flatMap(([, exported, kind, name]) => {
		const isOwnConstant = exported === undefined && kind === 'const' && /^[A-Z\d_]+$/.test(name!);
		return isOwnConstant ? [] : [name!];
	});
}

/** The words of a file's name, in the order of the alphabet: `bent-as`, `as-bent` and `BentAs` cannot be told apart in a list. */
export function baseOf(file: string): string {
	const words = posix
		.basename(file)
		.replace(/\.tsx?$/, '')
		.replace(/([a-z])([A-Z])/g, '$1-$2')
		.toLowerCase()
		.split('-');
	return words.sort().join('-');
}

/** What is declared in more than one place, with the places. */
export function namesTwice(
	declared: readonly (readonly [place: string, names: readonly string[]])[],
): Record<string, string[]> {
	const places = new Map<string, string[]>();
	for (const [place, names] of declared) {
		for (const name of new Set(names)) places.set(name, [...(places.get(name) ?? []), place]);
	}
	return Object.fromEntries([...places].filter(([, at]) => at.length > 1).sort(([a], [b]) => (a < b ? -1 : 1)));
}
