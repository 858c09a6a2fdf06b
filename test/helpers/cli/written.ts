import type { Io } from '../../../src/cli/io.ts';

/** Streams that keep what a command writes. */
export function written() {
	const kept = { out: '', err: '' };
	const to = (name: keyof typeof kept) => ({
		write: (chunk: string) => {
			kept[name] += chunk;
			return true;
		},
	});
	return { io: { stdout: to('out'), stderr: to('err') } as unknown as Io, kept };
}
