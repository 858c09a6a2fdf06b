import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

/** Defined where the program is one bundle: the build has put the files beside it. */
declare const FONTS_BESIDE: true | undefined;

/** The file of a font. In a checkout it lies in its package. */
export function fontFile(name: 'DejaVuSans' | 'DejaVuSans-Bold'): string {
	const file = `${name}.ttf`;
	if (typeof FONTS_BESIDE !== 'undefined') return fileURLToPath(new URL(file, import.meta.url));
	return createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`);
}
