// Bundles src/main.ts into the one program file that `bin` names. Ink and what prints are split off and loaded only when they are wanted; the fonts lie beside.
import { chmod, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { bundleOptions, FONTS, root } from './bundle.mjs';
import { leanFont } from './lean-font.mjs';

// Written over what is there, and what is stale removed last: a program that runs from here meanwhile still finds its parts.
const { metafile } = await build({ ...bundleOptions, metafile: true });
const folder = join(root, '.build');
// What `npm install -g .` linked to this folder stays a command when the folder was emptied and built anew.
await chmod(join(folder, 'pullbook.js'), 0o755);
const fonts = join(root, 'node_modules', 'dejavu-fonts-ttf', 'ttf');
for (const name of FONTS) await writeFile(join(folder, name), leanFont(await readFile(join(fonts, name))));
const made = new Set([...Object.keys(metafile.outputs).map((path) => basename(path)), ...FONTS]);
for (const name of await readdir(folder)) if (!made.has(name)) await rm(join(folder, name), { recursive: true });
