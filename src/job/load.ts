/** Loads a job file from disk. */
import { realpathSync } from 'node:fs';
import type { Fault } from './facts/index.ts';
import { JobFileError } from './fault.ts';
import { jobText } from './job-text.ts';
import { scanJson } from './json-text.ts';
import { type GoodJob, readJob } from './read.ts';
import type { ToolingLookup } from './tooling.ts';

export interface LoadedJob extends GoodJob {
	/** The file as parsed, before anything was filled in. */
	raw: unknown;
	/** The file's real path. */
	path: string;
}

/**
 * The job in a file, with what is kept of its bender and die filled in by `lookup`.
 * @throws JobFileError with every fault of the file, also when it cannot be read at all
 */
export function loadJob(path: string, lookup?: ToolingLookup): LoadedJob {
	const parsed = parseJobText(jobText(path));
	if (!('value' in parsed)) throw new JobFileError(path, parsed.faults);
	const read = readJob(parsed.value, lookup);
	const faults = [...parsed.faults, ...('faults' in read ? read.faults : [])];
	if ('faults' in read || faults.length > 0) throw new JobFileError(path, faults);
	return { ...read, raw: parsed.value, path: realpathSync(path) };
}

/**
 * What a job file holds, whether a job can be made of it or not.
 * @throws JobFileError where it cannot be read or is no JSON
 */
export function rawJob(path: string): unknown {
	const parsed = parseJobText(jobText(path));
	if ('value' in parsed) return parsed.value;
	throw new JobFileError(path, parsed.faults);
}

/**
 * The value that a JSON text holds, with a fault for each key that stands twice; without `value` where the text is no
 * JSON: its last fault then has the line and column.
 */
export function parseJobText(text: string): { value: unknown; faults: Fault[] } | { faults: Fault[] } {
	// Some editors put a byte-order mark in front.
	const plain = text.replace(/^\uFEFF/, '');
	const { faults, whole } = scanJson(plain);
	return whole ? { value: JSON.parse(plain), faults } : { faults };
}
