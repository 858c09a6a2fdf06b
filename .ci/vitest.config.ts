import { defineConfig } from 'vitest/config';

export default defineConfig({
	root: new URL('..', import.meta.url).pathname,
	test: {
		include: ['test/**/*.test.{ts,tsx}'],
		// Ink blanks its frames under CI; the screens are tested as a person sees them.
		env: { CI: 'false' },
		testTimeout: 60_000,
	},
});
