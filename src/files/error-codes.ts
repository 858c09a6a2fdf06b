import type { Cause } from '../session/protocol/facts/not-saved.ts';

/** The errno name of a system error, or '' when it has none. */
export function codeOf(error: unknown): string {
	return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** A system error as a fact. */
export function causeOf(error: unknown): Cause {
	return { errno: codeOf(error), text: error instanceof Error ? error.message : String(error) };
}
