import { homedir, userInfo } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';

/**
 * The folder that settings and logs are kept in, as an absolute path: `--home`, else PULLBOOK_HOME, else the system's place for a
 * user's data (XDG base directory specification, or LOCALAPPDATA on Windows). Nothing is made on disk.
 */
export function homeFolder(
	env: Readonly<Record<string, string | undefined>>,
	flag: string | null = null,
	platform: NodeJS.Platform = process.platform,
): string {
	const named = flag || env.PULLBOOK_HOME;
	if (named) return resolve(named);
	if (platform === 'win32') return join(env.LOCALAPPDATA || join(homedir(), 'AppData', 'Local'), 'pullbook');
	// The specification has a relative path ignored.
	const data = env.XDG_DATA_HOME && isAbsolute(env.XDG_DATA_HOME) ? env.XDG_DATA_HOME : null;
	return join(data ?? join(env.HOME || ownFolder(), '.local', 'share'), 'pullbook');
}

/** The user's own folder by the system's account; the environment may have it empty, which would lead into whatever folder one is in. */
function ownFolder(): string {
	const named = homedir();
	if (named !== '') return named;
	return userInfo().homedir;
}
