/** Names that asks, readings and facts share. */
export type AskKind = 'set' | 'pull' | 'measure' | 'confirm' | 'check' | 'decide';
export type ReadingKind = 'loaded' | 'released' | 'pointer' | 'angle' | 'mark' | 'rotation' | 'length' | 'check';
export type EvidenceKind = 'angle' | 'farEndToMark' | 'leg' | 'mark' | 'rotation';
export type CheckKind = 'drop' | 'angle' | 'span' | 'out' | 'width' | 'overall' | 'ovality';

/** What is to be read again before anything is built on it: of a bend, or the check of that name. */
export interface ToMeasure {
	kind: 'angle' | 'check' | 'mark' | 'rotation';
	bend?: number;
	name?: string;
}
