// npm runs this after `npm ci`, and before `npm pack` and `npm install -g .`. The last two bring none of what the build needs, so on a clean
// checkout it is installed here first.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

if (!existsSync(join(root, 'node_modules', 'esbuild'))) {
	// What npm was told for the outer run (where to install to, that it is for everyone) must not reach the inner one.
	const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('npm_')));
	const { status } = spawnSync('npm', ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'], {
		cwd: root,
		env,
		stdio: ['ignore', 'ignore', 'inherit'],
		shell: process.platform === 'win32',
	});
	if (status !== 0) {
		console.error(`Pullbook was not built: "npm ci" in ${root} failed. Run it there and read what it says.`);
		process.exit(1);
	}
}
await import('./build.mjs');
