import { build, type Metafile } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';

/** What must not be waited for where no screen is drawn and no settings are kept. */
const HEAVY =
	/node_modules\/(ink|react|react-reconciler|yoga-layout|ink-text-input|conf|ajv|@react-pdf|pdfkit|fontkit|d3-[a-z]+)\//;

let outputs: Metafile['outputs'];
let inputs: Metafile['inputs'];

/** The files of the program that are loaded for a command: its own, the entry, and all they import outright. */
function filesFor(source: string): string[] {
	const found = Object.entries(outputs).find(([, { entryPoint }]) => entryPoint === source);
	if (!found) throw new Error(`${source} is in no chunk of its own: is it still loaded by import()?`);
	const entry = Object.keys(outputs).find((path) => outputs[path]!.entryPoint === 'src/main.ts')!;
	const seen = new Set<string>();
	const visit = (path: string) => {
		if (seen.has(path)) return;
		seen.add(path);
		for (const { path: next, kind } of outputs[path]?.imports ?? []) if (kind === 'import-statement') visit(next);
	};
	visit(entry);
	visit(found[0]);
	return [...seen].filter((path) => outputs[path] !== undefined);
}

/** Names of the source files in them. */
const loadedFor = (source: string): string[] => filesFor(source).flatMap((path) => Object.keys(outputs[path]!.inputs));

/** The first circle of source files that import one another outright, as they are bundled; null where there is none. */
function circle(): string[] | null {
	const done = new Set<string>();
	const visit = (file: string, way: readonly string[]): string[] | null => {
		if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
		if (done.has(file)) return null;
		for (const { path, kind } of inputs[file]?.imports ?? []) {
			const found = kind === 'import-statement' && path.startsWith('src/') ? visit(path, [...way, file]) : null;
			if (found !== null) return found;
		}
		done.add(file);
		return null;
	};
	return Object.keys(inputs).reduce<string[] | null>((found, file) => found ?? visit(file, []), null);
}

describe('the bundle', () => {
	beforeAll(async () => {
		const { bundleOptions } = await import(new URL('../../.ci/bundle.mjs', import.meta.url).href);
		const { metafile } = await build({ ...bundleOptions, write: false, metafile: true });
		({ outputs, inputs } = metafile!);
	});

	it.each(['layout', 'check', 'log'])('loads neither screen nor paper nor settings store for %s', (command) => {
		const loaded = loadedFor(`src/cli/${command}.ts`);
		expect(loaded).toContain(`src/cli/${command}.ts`);
		expect(loaded).toContain('src/main.ts');
		expect(loaded.filter((file) => HEAVY.test(file))).toEqual([]);
	});

	it('loads for a mark table neither what folds logs nor what describes documents', () => {
		const folds = 'src/session/log/fold.ts';
		const isAside = (file: string) => file === folds || /node_modules\/zod\//.test(file);
		expect(loadedFor('src/cli/layout.ts').filter(isAside)).toEqual([]);
		expect(loadedFor('src/cli/reading-logs.ts')).toContain(folds);
	});

	it.each([
		['layout', 6],
		['cut', 9],
		['log', 10],
		['bend', 8],
		['home', 9],
	])('lies in few files for %s: Node takes longer to find sixty than to read them', (command, most) => {
		expect(filesFor(`src/cli/${command}.ts`).length).toBeLessThanOrEqual(most);
	});

	it('loads the screen that is drawn first from the files that its command has loaded', () => {
		const own = 'src/screen/shell/open-screen.tsx';
		const loaded = new Set(filesFor('src/cli/home.ts'));
		const more = filesFor(own).filter((path) => !loaded.has(path));
		expect(more.map((path) => outputs[path]!.entryPoint)).toEqual([own]);
	});

	it('runs its modules in the order of the source: none loads itself by what it is put together with', () => {
		expect(Object.keys(inputs).length).toBeGreaterThan(500);
		expect(circle()).toBeNull();
	});

	it('loads what draws plots only with the review', () => {
		const isPlots = (file: string) => /node_modules\/d3-/.test(file);
		expect(loadedFor('src/screen/shell/open-screen.tsx').filter(isPlots)).toEqual([]);
		expect(loadedFor('src/screen/review/index.ts').filter(isPlots)).not.toEqual([]);
	});

	it('does load the screen for the home screen, or this test could not tell', () => {
		const home = Object.entries(outputs).filter(([, { inputs }]) =>
			Object.keys(inputs).some((file) => HEAVY.test(file)),
		);
		expect(home.length).toBeGreaterThan(0);
	});
});
