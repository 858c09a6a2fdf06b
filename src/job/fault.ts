import { asJson } from '../tube/as-json.ts';
import type { Fault, Found } from './facts/index.ts';

/** Takes each fault as it is found, so that reading goes on past it. */
export type Report = (fault: Fault) => void;

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
		return [
			...this.faults,
			{ at: 'job', found: { code: 'more-faults', count: this.#more }, right: { code: 'above-first' } },
		];
	}
}

/** A job file that cannot be used; exit code 2. `words` tells its faults. */
export class JobFileError extends Error {
	readonly exitCode = 2;
	override name = 'JobFileError';
	readonly fact: { readonly code: 'job-file'; readonly path: string; readonly faults: readonly Fault[] };

	constructor(path: string, faults: readonly Fault[]) {
		super(`${path}: ${faults.map(({ at, right }) => `${at} ${right.code}`).join(', ')}`);
		this.fact = { code: 'job-file', path, faults };
	}
}

/** A value as what stands at a fault's place. */
export function valued(value: unknown): Found {
	return value === undefined ? { code: 'nothing' } : { code: 'value', value };
}

/** A key longer than this stands in a place as JSON has it, cut. */
const LONGEST_KEY = 60;

/** The place of a key within a place. */
export function inside(at: string, key: string | number): string {
	if (typeof key === 'number') return `${at}[${key}]`;
	if (key.length > LONGEST_KEY || !/^[\w-]+$/.test(key)) return `${at}[${asJson(key)}]`;
	return at === 'job' ? key : `${at}.${key}`;
}
