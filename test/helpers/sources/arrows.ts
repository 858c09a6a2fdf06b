import { posix } from 'node:path';
import ts from 'typescript';

/** Rooms from left to right; a room may import what stands to its left, and siblings stand together. */
const RANKS: readonly (readonly string[])[] = [
	['maths', 'units'],
	['tube'],
	['springback', 'fit'],
	['session'],
	['files'],
	['journal', 'job', 'settings'],
	['review', 'practice'],
	['words'],
	['paper', 'screen'],
	['cli'],
	['main'],
];
const PURE = new Set(['maths', 'units', 'tube', 'springback', 'fit', 'session', 'words']);
/** Packages that only these rooms may import. */
const KEPT_TO: readonly (readonly [packages: RegExp, rooms: readonly string[]])[] = [
	[/^(ink|ink-text-input)(\/|$)/, ['screen']],
	[/^@react-pdf\//, ['paper']],
	[/^react(\/|$)/, ['screen', 'paper']],
];
/** Rooms that are loaded by import(), since few commands need what they bring. */
const LAZY = ['screen', 'paper'];
const CLOCKS = new Set(['Date', 'performance', 'process', 'crypto']);

interface Import {
	of: string;
	dynamic: boolean;
	typeOnly: boolean;
}

/**
 * What is wrong with the imports of one source file, a sentence each.
 * @param file path from the folder of the rooms, with forward slashes: `tube/marks.ts`
 */
export function arrowFaults(file: string, source: string): string[] {
	const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
	const faults: string[] = [];
	const visit = (node: ts.Node) => {
		const found = importAt(node);
		if (found === 'unreadable') faults.push(`${file}: import() of something that is not written out`);
		else if (found) faults.push(...importFaults(file, found));
		if (PURE.has(roomOf(file))) faults.push(...impurity(file, node));
		ts.forEachChild(node, visit);
	};
	visit(tree);
	return faults;
}

function roomOf(file: string): string {
	return file.includes('/') ? file.slice(0, file.indexOf('/')) : file.replace(/\.tsx?$/, '');
}

function importAt(node: ts.Node): Import | 'unreadable' | null {
	if (ts.isImportDeclaration(node)) {
		const typeOnly = node.importClause?.isTypeOnly ?? false;
		return { of: textOf(node.moduleSpecifier), dynamic: false, typeOnly };
	}
	if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
		return { of: textOf(node.moduleSpecifier), dynamic: false, typeOnly: node.isTypeOnly };
	}
	if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
		return { of: textOf(node.argument.literal), dynamic: false, typeOnly: true };
	}
	if (!ts.isCallExpression(node)) return null;
	const loads =
		node.expression.kind === ts.SyntaxKind.ImportKeyword ||
		(ts.isIdentifier(node.expression) && node.expression.text === 'require');
	if (!loads) return null;
	const [argument] = node.arguments;
	return argument && ts.isStringLiteralLike(argument)
		? { of: argument.text, dynamic: true, typeOnly: false }
		: 'unreadable';
}

function textOf(node: ts.Node): string {
	return ts.isStringLiteralLike(node) ? node.text : node.getText();
}

function importFaults(file: string, { of, dynamic, typeOnly }: Import): string[] {
	const room = roomOf(file);
	if (!of.startsWith('.')) return packageFaults(file, room, of);
	const target = posix.normalize(posix.join(posix.dirname(file), of));
	if (target.startsWith('..')) {
		return room === 'cli' && target === '../package.json' ? [] : [`${file} imports ${of}, which is in no room`];
	}
	const other = roomOf(target);
	if (other === room) return [];
	if (room === 'terminal') return [`${file} imports ${of}: terminal imports nothing of ours`];
	if (other === 'terminal')
		return ['screen', 'cli'].includes(room) ? [] : [`${file} imports ${of}: terminal serves screen and cli only`];
	const from = rankOf(room);
	const to = rankOf(other);
	if (from < 0) return [`${file}: ${room} is not a room of the design`];
	if (to < 0) return [`${file} imports ${of}: ${other} is not a room of the design`];
	if (to >= from) return [`${file} imports ${of}: ${room} may not import ${other}`];
	if (LAZY.includes(other) && !dynamic && !typeOnly) return [`${file} imports ${of}: ${other} is loaded by import()`];
	return [];
}

function packageFaults(file: string, room: string, of: string): string[] {
	if (PURE.has(room)) return [`${file} imports ${of}: ${room} is pure and imports no package`];
	const kept = KEPT_TO.find(([packages]) => packages.test(of));
	if (kept && !kept[1].includes(room)) return [`${file} imports ${of}: only ${kept[1].join(' and ')} may`];
	return [];
}

function rankOf(room: string): number {
	return RANKS.findIndex((rank) => rank.includes(room));
}

/** Uses of the clock, of chance and of the process, none of which a pure room may know. */
function impurity(file: string, node: ts.Node): string[] {
	const isCall = ts.isNewExpression(node) || ts.isCallExpression(node);
	if (isCall && node.expression.getText() === 'Date') return [`${file} reads the clock: ${node.getText()}`];
	if (!ts.isPropertyAccessExpression(node)) return [];
	const owner = node.expression.getText().replace(/^globalThis\./, '');
	if (CLOCKS.has(owner)) return [`${file} is not pure: ${node.getText()}`];
	return owner === 'Math' && node.name.text === 'random' ? [`${file} is not pure: ${node.getText()}`] : [];
}

/** Circles of files that import one another, each as the files that it goes through; `imports` are the files that each one imports. */
export function circles(imports: ReadonlyMap<string, readonly string[]>): string[][] {
	const found: string[][] = [];
	const done = new Set<string>();
	const walk = (file: string, way: readonly string[]) => {
		const at = way.indexOf(file);
		if (at >= 0) found.push([...way.slice(at), file]);
		if (at >= 0 || done.has(file)) return;
		for (const next of imports.get(file) ?? []) walk(next, [...way, file]);
		done.add(file);
	};
	for (const file of imports.keys()) walk(file, []);
	return found;
}

/** The files of ours that a source file imports. */
export function importsOf(file: string, source: string): string[] {
	const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
	return tree.statements.flatMap((statement) => {
		const found = importAt(statement);
		if (found === null || found === 'unreadable' || !found.of.startsWith('.')) return [];
		return [posix.normalize(posix.join(posix.dirname(file), found.of))];
	});
}
