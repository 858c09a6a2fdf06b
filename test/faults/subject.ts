import type { FaultFs } from '../helpers/disk/fault-fs.ts';

/** Something that is written to a disk, and what must hold on that disk afterwards, whatever befell it. */
export interface Subject<Left> {
	name: string;
	run(fs: FaultFs): Left | Promise<Left>;
	/** @throws Broken where it does not hold */
	check(fs: FaultFs, left: Left): void | Promise<void>;
}

/** What was promised did not hold. */
export class Broken extends Error {}

export function must(holds: boolean, what: string): void {
	if (!holds) throw new Broken(what);
}
