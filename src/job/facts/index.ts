/** What is wrong with a job file; `words` makes the sentences. */
import type { CheckFound, CheckRight } from './checks.ts';
import type { FormFound, FormRight } from './form.ts';
import type { TextFound, TextRight } from './job-text.ts';
import type { ShapeFound, ShapeRight } from './shape.ts';
import type { ToolingRight } from './tooling.ts';
import type { ValueFound, ValueRight } from './value.ts';

export type { CheckFound, CheckRight, StraightsRight, Surface } from './checks.ts';
export type { FormFound, FormRight } from './form.ts';
export type { FileKind, TextFound, TextPlace, TextRight, TextWanted } from './job-text.ts';
export type { ShapeFound, ShapeRight } from './shape.ts';
export type { ToolingRight } from './tooling.ts';
export type { NameOf, NumberOf, ValueFound, ValueRight } from './value.ts';

/** What stands there. */
export type Found = ValueFound | TextFound | ShapeFound | CheckFound | FormFound;

/** What would be right. */
export type Right = ValueRight | TextRight | ToolingRight | ShapeRight | CheckRight | FormRight;

/** One fault, with its place, what stands there and what would be right. Lengths in the job's unit, angles in degrees. */
export interface Fault {
	/** The place, counted from 0 (`shape.bends[2].angle` is bend 3); `job` is the whole, `text` what is no JSON, where `found` has the line. */
	at: string;
	found: Found;
	right: Right;
	/** The key may be left out instead. */
	orWithout?: string;
}
