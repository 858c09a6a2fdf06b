import type { ComponentType } from 'react';
import { Copes } from './full-size/Copes.tsx';
import { TubeProfile } from './full-size/TubeProfile.tsx';
import { Wraps } from './full-size/Wraps.tsx';
import type { PartProps } from './job-on-paper.ts';
import { ShopSheet } from './sheet/ShopSheet.tsx';

/** What there is to print of a job, in the order in which it is printed: the pages of each, as one component. */
export const PARTS = {
	sheet: ShopSheet,
	profile: TubeProfile,
	wraps: Wraps,
	copes: Copes,
} as const satisfies Readonly<Record<string, ComponentType<PartProps>>>;

export type PartName = keyof typeof PARTS;

export const PART_NAMES = Object.keys(PARTS) as readonly PartName[];
