import { wrapBehind } from '../terminal/wrap.ts';

/** Most characters in a line of a page that goes to a file or a printer as well. */
export const WIDTH = 80;

/** A text as lines of a page, the first one behind `lead` and the rest under it. */
export const pageLines = (text: string, lead = ''): string[] => wrapBehind(lead, text, WIDTH);
