import ts from 'typescript';

/** A text in a source that people would read, and its line, counted from 1. */
export interface ToldText {
	line: number;
	text: string;
}

/** What is told by a single word all the same: what stands under these names is shown. */
const SHOWN_UNDER = new Set(['label', 'brief', 'title', 'empty', 'below', 'text', 'words', 'says', 'caption']);
/** The functions whose first argument is shown. */
const SHOWN_BY = new Set(['line', 'span', 'wrapped', 'chopped']);
/** An error of the program's own, for whoever mends it. */
const OWN_ERRORS = new Set(['Error', 'RangeError', 'TypeError']);

/**
 * The texts that people would read, in order. Read is what has a word beside a blank, or a capitalized word; a word by itself only where it is shown:
 * under a name of `SHOWN_UNDER`, in the first argument of `SHOWN_BY`, as JSX text, or padded into a column. Not read: what the program is made of (imports, types, the
 * names of properties, the name of a class of errors), what is only compared (`===`, `case`, `in`, a key in brackets), and the errors of the program's own.
 */
export function toldTexts(file: string, source: string): ToldText[] {
	const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
	const told: ToldText[] = [];
	const visit = (node: ts.Node): void => {
		if (isOfTheProgram(node)) return;
		const text = textOf(node);
		if (text !== null && !isCompared(node) && isRead(text, isShown(node)))
			told.push({ line: tree.getLineAndCharacterOfPosition(node.getStart()).line + 1, text });
		ts.forEachChild(node, visit);
	};
	visit(tree);
	return told;
}

/** What stands in the quotes, each blank that is filled in as `…`; null for what is no text. */
function textOf(node: ts.Node): string | null {
	if (ts.isStringLiteralLike(node)) return node.text;
	if (ts.isJsxText(node)) return node.text.trim();
	if (!ts.isTemplateExpression(node)) return null;
	return node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join('');
}

function isOfTheProgram(node: ts.Node): boolean {
	if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return true;
	if (ts.isCallExpression(node)) return node.expression.kind === ts.SyntaxKind.ImportKeyword;
	return ts.isNewExpression(node) && ts.isIdentifier(node.expression) && OWN_ERRORS.has(node.expression.text);
}

function isCompared(node: ts.Node): boolean {
	const { parent } = node;
	if (ts.isCaseClause(parent)) return parent.expression === node;
	if (ts.isElementAccessExpression(parent)) return parent.argumentExpression === node;
	if (ts.isPropertyAssignment(parent)) return parent.name === node;
	if (ts.isPropertyDeclaration(parent)) return parent.name.getText() === 'name';
	return ts.isBinaryExpression(parent) && COMPARISONS.has(parent.operatorToken.kind);
}

const COMPARISONS = new Set([
	ts.SyntaxKind.EqualsEqualsEqualsToken,
	ts.SyntaxKind.ExclamationEqualsEqualsToken,
	ts.SyntaxKind.InKeyword,
]);

/** Whether it comes onto the screen as it stands: through a choice, a pair of brackets, a list. */
function isShown(node: ts.Node): boolean {
	const { parent } = node;
	if (ts.isJsxText(node)) return true;
	if (ts.isPropertyAssignment(parent)) return ts.isIdentifier(parent.name) && SHOWN_UNDER.has(parent.name.text);
	if (ts.isCallExpression(parent))
		return ts.isIdentifier(parent.expression) && SHOWN_BY.has(parent.expression.text) && parent.arguments[0] === node;
	if (ts.isPropertyAccessExpression(parent)) return /^pad(Start|End)$/.test(parent.name.text);
	const goesOn = ts.isConditionalExpression(parent) ? parent.condition !== node : ts.isParenthesizedExpression(parent);
	return goesOn && isShown(parent);
}

function isRead(text: string, shown: boolean): boolean {
	if (shown) return /\p{L}/u.test(text.replaceAll('…', ''));
	return (/\p{L}{2}/u.test(text) && /\s/.test(text)) || /(?<![\p{L}\d_])\p{Lu}\p{Ll}/u.test(text);
}
