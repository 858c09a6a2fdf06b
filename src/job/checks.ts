/** Reads `checks`: what each measures, whether it is there to be measured, and its tolerance. */
import * as z from 'zod/mini';
import { BOUNDS } from '../tube/bounds.ts';
import type { Check, Units } from '../tube/job.ts';
import { type Kind, type Measurable, READERS } from './check-readers.ts';
import { inside, type Report, show } from './fault.ts';
import { isObject, length, number, readObject, reportUnknown, text } from './fields.ts';

const KINDS = Object.keys(READERS) as Kind[];
const MOST_CHECKS = 200;

export function readChecks(value: unknown, tube: Measurable, report: Report): Check[] {
	if (value === undefined) return [];
	if (!Array.isArray(value) || value.length > MOST_CHECKS) {
		report({
			at: 'checks',
			found: show(value),
			right: `a list [ … ] of at most ${MOST_CHECKS} checks, or no "checks"`,
		});
		return [];
	}
	const checks = value.map((item, i) => readCheck(item, inside('checks', i), tube, report));
	reportRepeatedNames(value, report);
	return checks.filter((check) => check !== null);
}

function readCheck(value: unknown, at: string, tube: Measurable, report: Report): Check | null {
	if (!isObject(value)) {
		report({ at, found: show(value), right: `an object { … } with "name" and one of ${KINDS.join(', ')}` });
		return null;
	}
	const kinds = KINDS.filter((kind) => Object.hasOwn(value, kind));
	const [kind] = kinds;
	if (kind === undefined || kinds.length > 1) {
		const found = kinds.length === 0 ? 'nothing to measure' : kinds.join(' and ');
		report({ at, found, right: `exactly one of ${KINDS.join(', ')}` });
		reportUnknown(value, at, ['name', 'tolerance', ...KINDS], report);
		return null;
	}
	const schemas = { name: text('a name, unlike those of the other checks'), [kind]: z.unknown() };
	const tolerance = toleranceSchema(kind, tube.units);
	const read = readObject(value, at, { ...schemas, tolerance }, ['name'], report);
	const measure = READERS[kind](value[kind], inside(at, kind), tube, report);
	const within = Object.hasOwn(value, 'tolerance') ? read.tolerance : defaultTolerance(kind, tube);
	if (typeof read.name !== 'string' || within === undefined || measure === null) return null;
	return { name: read.name, tolerance: within, ...measure };
}

function toleranceSchema(kind: Kind, units: Units): z.ZodMiniType<number> {
	if (kind === 'angle') return number('a tolerance in degrees', BOUNDS.angleTolerance);
	if (kind === 'ovality') return number('a tolerance of the ratio', BOUNDS.ratioTolerance);
	return length(units, BOUNDS.lengthTolerance) as z.ZodMiniType<number>;
}

function defaultTolerance(kind: Kind, tube: Measurable): number | undefined {
	if (kind === 'angle') return 0.5;
	return kind === 'ovality' ? 0.1 : tube.length;
}

function reportRepeatedNames(items: readonly unknown[], report: Report): void {
	const first = new Map<string, number>();
	items.forEach((item, i) => {
		const name = isObject(item) ? item.name : undefined;
		if (typeof name !== 'string') return;
		const before = first.get(name);
		if (before === undefined) first.set(name, i);
		else {
			const right = `a name of its own: checks[${before}] is called that`;
			report({ at: inside(inside('checks', i), 'name'), found: show(name), right });
		}
	});
}
