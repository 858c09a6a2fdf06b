import type { LockSelf } from '../../../src/journal/lock.ts';

/** A process that alone lives on its machine: all others in a lock have ended. */
export function onlyProcess(pid: number): LockSelf {
	return { pid, host: 'bench', boot: 'boot-1', alive: (other) => other === pid };
}
