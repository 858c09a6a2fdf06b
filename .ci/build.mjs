// Bundles src/main.ts into the one program file that `bin` names. Ink is split off and loaded only when a screen is wanted.
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { bundleOptions, root } from './bundle.mjs';

await rm(join(root, '.build'), { recursive: true, force: true });
await build(bundleOptions);
