import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

// By its address: the build's own files have no types.
const { patchedInk } = await import(new URL('test-ink.mjs', import.meta.url).href);

const root = new URL('..', import.meta.url).pathname;
const ALL = ['test/**/*.test.{ts,tsx}'];

/** A test that puts something in a module's place, or changes the process that it runs in: it has a process to itself. */
const ALONE =
	/\bvi\.(mock|doMock|stub\w+|useFakeTimers)\b|\bprocess\.(chdir|umask)\(|\bprocess\.env\.\w+ = |\bprocess, 'std/;

const alone = readdirSync(`${root}test`, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\.test\.tsx?$/.test(file))
	.map((file) => `test/${file.replaceAll('\\', '/')}`)
	.filter((file) => ALONE.test(readFileSync(`${root}${file}`, 'utf8')));

/** The files that take longest, begun first: begun last, one of them would keep a single processor busy alone. */
const LONGEST = [
	'cli/whole-run',
	'cli/contract',
	'cli/lines-cold',
	'screen/session',
	'screen/new-job',
	'practice/session',
];

/** Those that share a process one after the other: any other between them would end it. */
class LongestFirst extends BaseSequencer {
	override async sort(specifications: TestSpecification[]) {
		const place = ({ moduleId, project }: TestSpecification) => {
			const at = LONGEST.findIndex((name) => moduleId.includes(`/test/${name}.`));
			return (project.config.isolate ? 0 : LONGEST.length + 1) + (at < 0 ? LONGEST.length : at);
		};
		return (await super.sort(specifications)).toSorted((a, b) => place(a) - place(b));
	}
}

export default defineConfig({
	root,
	resolve: { alias: await patchedInk() },
	test: {
		// As on a machine that builds: left to itself Ink draws nothing then, and the tests of the screen would fail.
		env: { CI: 'true' },
		testTimeout: 60_000,
		hookTimeout: 60_000,
		// Left to itself the runner keeps one processor free, which of two is half of the machine.
		maxWorkers: '100%',
		sequence: { sequencer: LongestFirst },
		projects: [
			{ extends: true, test: { name: 'alone', include: alone } },
			{ extends: true, test: { name: 'shared', include: ALL, exclude: alone, isolate: false } },
		],
	},
});
