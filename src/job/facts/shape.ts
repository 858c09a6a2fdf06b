import type { PointFact } from '../../tube/points.ts';

export type ShapeFound = { code: 'both-shapes' | 'neither-shape' };

export type ShapeRight =
	| { code: 'shape' | 'one-shape' }
	| { code: 'bends' | 'points'; least: number; most: number }
	| { code: 'point'; units: string }
	/** Room between the drawing's corners that these bends need at the finished radius. */
	| { code: 'room'; least: number; finished: readonly number[]; bends: readonly number[] }
	| PointFact;
