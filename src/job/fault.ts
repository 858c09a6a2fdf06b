/** What is wrong with a job file: every fault with its place, what stands there and what would be right. */
export interface Fault {
	/** The place, counted from 0 (`shape.bends[2].angle` is bend 3); `job` is the whole. */
	at: string;
	/** What stands there. */
	found: string;
	/** What would be right. */
	right: string;
}

/** Takes each fault as it is found, so that reading goes on past it. */
export type Report = (fault: Fault) => void;

/** Characters of a value that a fault repeats. */
const LONGEST = 60;

/** So many faults are told of one file: one with more is no job file. */
const MOST_FAULTS = 200;

/** A list of faults that takes in no more of them than are told, and how many there were. */
export class FaultList {
	readonly faults: Fault[] = [];
	#more = 0;

	/** Whether a further fault would only be counted. */
	get isFull(): boolean {
		return this.faults.length >= MOST_FAULTS;
	}

	readonly report: Report = (fault) => {
		if (this.isFull) this.#more++;
		else this.faults.push(fault);
	};

	/** All that is told. */
	told(): Fault[] {
		if (this.#more === 0) return this.faults;
		const found = `${this.#more} more ${this.#more === 1 ? 'fault' : 'faults'}`;
		return [...this.faults, { at: 'job', found, right: 'what is asked for above first' }];
	}
}

/** A job file that cannot be used. The message has one line a fault; exit code 2. */
export class JobFileError extends Error {
	readonly exitCode = 2;
	override name = 'JobFileError';
	readonly path: string;
	readonly faults: readonly Fault[];

	constructor(path: string, faults: readonly Fault[]) {
		super(`${path}: ${countOf(faults)}\n${faults.map((fault) => `  ${formatFault(fault)}`).join('\n')}`);
		this.path = path;
		this.faults = faults;
	}
}

/** One fault as a sentence. */
export function formatFault({ at, found, right }: Fault): string {
	return `${at}: found ${found}; write ${right}`;
}

/** `1 fault`, `3 faults`. */
export function countOf(faults: readonly Fault[]): string {
	return faults.length === 1 ? '1 fault' : `${faults.length} faults`;
}

/** A value as a fault shows it, cut where it runs long. */
export function show(value: unknown): string {
	if (value === undefined) return 'nothing';
	if (typeof value === 'number') return String(value);
	// A long text is cut before it is written out.
	return cut(JSON.stringify(typeof value === 'string' ? value.slice(0, LONGEST) : value));
}

const cut = (text: string): string => (text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`);

/** The place of a key within a place. */
export function inside(at: string, key: string | number): string {
	if (typeof key === 'number') return `${at}[${key}]`;
	if (key.length > LONGEST || !/^[\w-]+$/.test(key)) return `${at}[${show(key)}]`;
	return at === 'job' ? key : `${at}.${key}`;
}
