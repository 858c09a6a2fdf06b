/** What commands and the screen load by import() when paper is wanted. */
export { PAPERS, usualPaper } from './page-size.ts';
export { PART_NAMES } from './parts.ts';
export { printCutList, printJob, printRecord } from './print.tsx';
