/** `npm run bench`: a start, then a key. The second is measured whatever the first came to; exit code 1 when a limit of either is passed. */
// One after the other: imported outright they would run at once.
await import('./start.ts');
await import('./keystroke.ts');
