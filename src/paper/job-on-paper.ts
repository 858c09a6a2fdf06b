import type { FirstStop } from '../session/plan/first-stops.ts';
import type { Known } from '../session/protocol/facts/known.ts';
import type { Job } from '../tube/job.ts';
import type { LayoutDocument } from '../tube/layout.ts';
import type { Shape } from '../tube/shape.ts';
import type { Paper } from './page-size.ts';

/** All that the pages of a job are made from. Lengths in the job's unit. */
export interface JobOnPaper {
	job: Job;
	document: LayoutDocument;
	/** The finished tube. */
	shape: Shape;
	/** Of every bend, and what they are known from. */
	stops: readonly FirstStop[];
	known: Known;
	/** Sentences on what the numbers rest on. */
	said: readonly string[];
	/** How and when it came about, for the foot of each page. */
	foot: string;
}

/** What the component of a part is given. */
export interface PartProps {
	of: JobOnPaper;
	paper: Paper;
	/** Whether nothing else is printed with it. */
	alone: boolean;
}
