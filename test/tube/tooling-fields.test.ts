import { expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { wrongValue } from '../../src/settings/field-value.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from '../../src/tube/tooling-fields.ts';
import { plainJobFile } from '../helpers/disk/job-file.ts';

/** Whether a job file may have this figure, whatever else is wrong with it. */
function jobTakes(name: string, value: number): boolean {
	const file = plainJobFile() as { tooling?: object };
	const read = readJob({ ...file, tooling: { ...file.tooling, [name]: value } });
	return !('faults' in read && read.faults.some(({ at }) => at === `tooling.${name}`));
}

it('has the same limits in a job file and for a bender that is kept', () => {
	const values = [
		-1e9, -1, -0.5, -0.499, 0, 1e-320, 1e-9, 0.000394, 0.25, 0.499, 0.5, 0.501, 2, 2.5, 45, 46, 360, 361, 393, 394, 1e9,
	];
	for (const name of FIELD_NAMES) {
		// A radius is held against the tube as well.
		if (name === 'clr') continue;
		for (const value of values)
			expect(`${name} ${value}: ${wrongValue(name, value, 'in') === null}`).toBe(
				`${name} ${value}: ${jobTakes(name, value)}`,
			);
	}
});

it('takes what holds without a figure for a value of it', () => {
	for (const name of FIELD_NAMES) {
		for (const units of ['in', 'mm'] as const) {
			const usual = TOOLING_FIELDS[name].usual(units);
			if (usual != null) expect(wrongValue(name, usual, units)).toBeNull();
		}
	}
});
