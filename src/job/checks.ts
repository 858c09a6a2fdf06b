import type { CheckKind } from '../session/protocol/kinds.ts';
import { isObject } from '../tube/as-json.ts';
/** Reads `checks`: what each measures, whether it is there to be measured, and its tolerance. */
import { BOUNDS } from '../tube/bounds.ts';
import type { Check, Units } from '../tube/job.ts';
import { type Measurable, READERS } from './check-readers.ts';
import { inside, type Report, valued } from './fault.ts';
import { anything, type FieldReader, length, number, readObject, reportUnknown, text } from './field-readers.ts';

const KINDS = Object.keys(READERS) as CheckKind[];
const MOST_CHECKS = 200;

export function readChecks(value: unknown, tube: Measurable, report: Report): Check[] {
	if (value === undefined) return [];
	if (!Array.isArray(value) || value.length > MOST_CHECKS) {
		report({ at: 'checks', found: valued(value), right: { code: 'checks', most: MOST_CHECKS }, orWithout: 'checks' });
		return [];
	}
	const checks = value.map((item, i) => readCheck(item, inside('checks', i), tube, report));
	reportRepeatedNames(value, report);
	return checks.filter((check) => check !== null);
}

function readCheck(value: unknown, at: string, tube: Measurable, report: Report): Check | null {
	if (!isObject(value)) {
		report({ at, found: valued(value), right: { code: 'a-check', kinds: KINDS } });
		return null;
	}
	const kinds = KINDS.filter((kind) => Object.hasOwn(value, kind));
	const [kind] = kinds;
	if (kind === undefined || kinds.length > 1) {
		report({ at, found: { code: 'kinds', kinds }, right: { code: 'one-kind', kinds: KINDS } });
		reportUnknown(value, at, ['name', 'tolerance', ...KINDS], report);
		return null;
	}
	const readers = { name: text('check'), tolerance: toleranceReader(kind, tube.units), [kind]: anything };
	const read: { name?: unknown; tolerance?: unknown } = readObject(value, at, readers, ['name'], report);
	const measure = READERS[kind](value[kind], inside(at, kind), tube, report);
	const within = Object.hasOwn(value, 'tolerance')
		? (read.tolerance as number | undefined)
		: defaultTolerance(kind, tube);
	if (typeof read.name !== 'string' || within === undefined || measure === null) return null;
	return { name: read.name, tolerance: within, ...measure };
}

function toleranceReader(kind: CheckKind, units: Units): FieldReader<number> {
	if (kind === 'angle') return number('angle-tolerance', BOUNDS.angleTolerance);
	if (kind === 'ovality') return number('ratio-tolerance', BOUNDS.ratioTolerance);
	return length(units, BOUNDS.lengthTolerance);
}

function defaultTolerance(kind: CheckKind, tube: Measurable): number | undefined {
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
			const at = inside(inside('checks', i), 'name');
			report({ at, found: valued(name), right: { code: 'other-check-name', index: before } });
		}
	});
}
