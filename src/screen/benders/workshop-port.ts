import type { ToolingLookup } from '../../job/tooling.ts';
import type { FieldChanges, KeptBender } from '../../settings/settings.ts';
import type { Lesson } from '../../springback/history.ts';

/** A change to what is kept of benders and dies; without `changes` the die, or without a die the bender, is forgotten. */
export interface ShopChange {
	bender: string;
	die: string | null;
	changes: FieldChanges | null;
}

/** What the screen needs to write job files and to set up benders. */
export interface WorkshopPort {
	benders(): readonly KeptBender[];
	lookup: ToolingLookup;
	/** What the kept sessions taught. */
	lessons(): readonly Lesson[];
	/** What was wrong with the kept benders, a sentence each. */
	problems(): readonly string[];
	/** @throws an error with `exitCode` 5 when the disk refuses */
	change(change: ShopChange): Promise<void>;
	/** A job file as parsed, with or without faults. @throws an error with `exitCode` 2 where it cannot be read or is no JSON */
	jobFile(path: string): unknown;
	/** The path of a file of that name in the folder of jobs in use. */
	jobPath(file: string): string;
	/**
	 * Writes a job file. False, with nothing changed, where one of that name is there and `over` does not say to take its place.
	 * @throws an error with `exitCode` 5 when the disk refuses
	 */
	saveJob(path: string, text: string, over: boolean): boolean;
}
