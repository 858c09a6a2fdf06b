/** Names that asks, readings and facts share. */
export type ReadingKind = 'loaded' | 'released' | 'pointer' | 'angle' | 'mark' | 'rotation' | 'length' | 'check';
export type EvidenceKind = 'angle' | 'farEndToMark' | 'leg' | 'mark' | 'rotation';
export type CheckKind = 'drop' | 'angle' | 'span' | 'out' | 'ovality';
