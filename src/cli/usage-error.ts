/** The command line cannot be followed; the message says what stands there and what would be right. Exit code 2. */
export class UsageError extends Error {
	readonly exitCode = 2;
	override name = 'UsageError';
}
