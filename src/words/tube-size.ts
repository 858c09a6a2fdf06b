import { trimmed } from '../units/format.ts';
import { foreignName } from './foreign.ts';

/** Diameter and wall, in a unit that is named beside them: `1.5 x 0.083`. */
export const tubeSize = ({ od, wall }: { od: number; wall: number }): string =>
	`${trimmed(od, 4)} x ${trimmed(wall, 4)}`;

/** The same with what it is made of: `1.5 x 0.083 1020-dom`. */
export const tubeWords = (tube: { od: number; wall: number; material: { name: string } }): string =>
	`${tubeSize(tube)} ${foreignName(tube.material.name)}`;
