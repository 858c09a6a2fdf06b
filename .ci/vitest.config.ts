import { defineConfig } from 'vitest/config';

// By its address: the build's own files have no types.
const { patchedInk } = await import(new URL('test-ink.mjs', import.meta.url).href);

export default defineConfig({
	root: new URL('..', import.meta.url).pathname,
	resolve: { alias: await patchedInk() },
	test: {
		include: ['test/**/*.test.{ts,tsx}'],
		// Without the program's patches Ink blanks its frames then, and the tests of the screen fail.
		env: { CI: 'true' },
		testTimeout: 60_000,
	},
});
