import { FIELD_NAMES, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';

/** Fields that hold with every die of a machine, and those of a die. */
export const MACHINE_FIELDS = FIELD_NAMES.filter((field) => TOOLING_FIELDS[field].with.includes('machine'));
export const DIE_FIELDS = FIELD_NAMES.filter((field) => TOOLING_FIELDS[field].with.includes('die'));
