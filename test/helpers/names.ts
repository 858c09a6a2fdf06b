import { posix } from 'node:path';

/**
 * The names that a source file of ours declares at its top: functions, types, classes, values in small letters, and what else it exports.
 * A constant in capitals that it keeps to itself is none of them: `constantsIn` has those. biome sets each at the beginning of a line.
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

export interface Constant {
	file: string;
	name: string;
	value: string;
	exported: boolean;
}

/** The constants in capitals that a source file declares at its top. */
export function constantsIn(file: string, source: string): Constant[] {
	const declarations = source.matchAll(/^(export )?const ([A-Z][A-Z\d_]*)\b[^=]*=\s*([\s\S]*?);$/gm);
	return [...declarations].map(([, exported, name, value]) => ({
		file,
		name: name!,
		value: value!.replace(/\s+/g, ' '),
		exported: exported !== undefined,
	}));
}

/** Constants of one name that cannot be told apart, with their files: in one folder, or one that all files may use, or the same value written twice. */
export function mistakable(constants: readonly Constant[]): Record<string, string[]> {
	const areAlike = (one: Constant, other: Constant) =>
		one.exported ||
		other.exported ||
		one.value === other.value ||
		posix.dirname(one.file) === posix.dirname(other.file);
	const mistaken = constants.filter((one) =>
		constants.some((other) => other.name === one.name && other.file !== one.file && areAlike(one, other)),
	);
	return namesTwice(mistaken.map(({ file, name }) => [file, [name]]));
}
