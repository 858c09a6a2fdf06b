import type { Units } from '../units/units.ts';

/** A unit in a heading. */
export const unitName = (units: Units): string => (units === 'in' ? 'inches' : 'millimeters');
