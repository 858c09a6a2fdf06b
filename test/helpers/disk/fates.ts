/**
 * What becomes of names (two fates) and of bytes (three) that were not flushed when the power goes. Names that outlast their bytes show a file
 * that was not flushed before it had its name.
 */
export const FATES: readonly (readonly [string, (fates: number) => number])[] = [
	['keeps all', () => 0],
	['drops all', () => 1],
	['keeps names and drops bytes', (fates) => (fates === 2 ? 0 : 1)],
	['keeps names and zeroes bytes', (fates) => (fates === 2 ? 0 : 2)],
	['keeps bytes and drops names', (fates) => (fates === 2 ? 1 : 0)],
];
