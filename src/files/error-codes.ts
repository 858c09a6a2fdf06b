/** The errno name of a system error, or '' when it has none. */
export function codeOf(error: unknown): string {
	return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

const REASONS: Record<string, string> = {
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk quota is used up',
	EROFS: 'the disk is read-only',
	EIO: 'the disk reported a fault',
	EACCES: 'permission is denied',
	EPERM: 'permission is denied',
	ENOENT: 'the file or its folder is gone',
	ENODEV: 'the disk is gone',
};

/** A system error in plain words, its errno name beside them. */
export function reasonOf(error: unknown): string {
	const code = codeOf(error);
	const words = REASONS[code];
	if (words) return `${words} (${code})`;
	return error instanceof Error ? error.message : String(error);
}
