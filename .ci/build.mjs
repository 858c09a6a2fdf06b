// Bundles src/main.ts into the one program file that `bin` names. Ink is split off and loaded only when a screen is wanted.
import { readdir, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { bundleOptions, root } from './bundle.mjs';

// Written over what is there, and what is stale removed last: a program that runs from here meanwhile still finds its parts.
const { metafile } = await build({ ...bundleOptions, metafile: true });
const made = new Set(Object.keys(metafile.outputs).map((path) => basename(path)));
const folder = join(root, '.build');
for (const name of await readdir(folder)) if (!made.has(name)) await rm(join(folder, name), { recursive: true });
