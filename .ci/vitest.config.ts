import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

// By its address: the build's own files have no types.
const { patchedInk } = await import(new URL('test-ink.mjs', import.meta.url).href);

/** The files that take longest, begun first: begun last, one of them would keep a single processor busy alone. */
const LONGEST = [
	'cli/whole-run',
	'cli/contract',
	'cli/lines-cold',
	'screen/session',
	'screen/new-job',
	'practice/session',
];

class LongestFirst extends BaseSequencer {
	override async sort(files: TestSpecification[]) {
		const place = ({ moduleId }: TestSpecification) => {
			const at = LONGEST.findIndex((name) => moduleId.includes(`/test/${name}.`));
			return at < 0 ? LONGEST.length : at;
		};
		return (await super.sort(files)).toSorted((a, b) => place(a) - place(b));
	}
}

export default defineConfig({
	root: new URL('..', import.meta.url).pathname,
	resolve: { alias: await patchedInk() },
	test: {
		include: ['test/**/*.test.{ts,tsx}'],
		// Without the program's patches Ink blanks its frames then, and the tests of the screen fail.
		env: { CI: 'true' },
		testTimeout: 60_000,
		// Left to itself the runner keeps one processor free, which of two is half of the machine.
		maxWorkers: '100%',
		sequence: { sequencer: LongestFirst },
	},
});
