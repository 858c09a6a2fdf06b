import type { CutList, CutPiece } from '../../tube/cut-list.ts';
import type { Job, Units } from '../../tube/job.ts';

/** The cut list of one tube. All lengths in `units`, which are the first job's. */
export interface CutOnPaper {
	tube: Job['tube'];
	units: Units;
	pieces: readonly (CutPiece & { job: Job })[];
	/** Null where nothing is left to cut. */
	list: CutList | null;
	kerf: number;
}
