import type { StopRequest } from '../../../src/springback/stop.ts';

/** A bend of 60 degrees, half a degree either way, in a fresh seat of a tube that was measured before. */
export const BEND_OF_60: StopRequest = {
	target: 60,
	under: 0.5,
	over: 0.5,
	risk: 0.02,
	dialStep: 0.5,
	maxAngle: 180,
	loadedBefore: null,
	measured: true,
};
