/** Reads `tooling.dies`: further dies of the same bender, by their names. */
import type { DieFields, Tooling, Units } from '../tube/job.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { inside, type Report, valued } from './fault.ts';
import { isObject, readObject, text } from './fields.ts';
import { figureReader } from './tooling-reader.ts';

const AT = 'tooling.dies';

/** No bender has more dies at hand for one tube. */
const MOST_DIES = 20;

const DIE_FIELDS = FIELD_NAMES.filter((name): name is keyof DieFields => TOOLING_FIELDS[name].with.includes('die'));

/** `own` is the job's own die, `od` the tube's diameter; each undefined where it is not known. */
export function readDies(
	value: unknown,
	own: string | undefined,
	od: number | undefined,
	units: Units,
	report: Report,
): Tooling['dies'] {
	if (value === undefined) return undefined;
	if (!isObject(value) || Object.keys(value).length > MOST_DIES) {
		report({ at: AT, found: valued(value), right: { code: 'dies', most: MOST_DIES } });
		return undefined;
	}
	const readers = Object.fromEntries(DIE_FIELDS.map((name) => [name, figureReader(name, units)] as const));
	const read = Object.entries(value).map(([name, die]) => {
		const at = inside(AT, name);
		reportName(name, own, at, report);
		const fields: Partial<DieFields> = readObject(die, at, readers, [], report);
		reportTightDie(fields.clr, od, at, report);
		return [name, fields] as const;
	});
	return read.length === 0 ? undefined : Object.fromEntries(read);
}

function reportName(name: string, own: string | undefined, at: string, report: Report): void {
	const result = text('die')(name);
	if ('wrong' in result) report({ at, found: valued(name), right: result.wrong });
	else if (name === own) report({ at, found: valued(name), right: { code: 'other-die-name' } });
}

function reportTightDie(clr: number | null | undefined, od: number | undefined, at: string, report: Report): void {
	if (clr == null || od === undefined || clr >= od / 2) return;
	report({ at: inside(at, 'clr'), found: valued(clr), right: { code: 'radius-at-least', least: od / 2 } });
}

/** The dies that a bend may name: the job's own and the further ones as written, right or not; null: not known. */
export function dieNames(tooling: unknown, own: string | undefined): readonly string[] | null {
	const dies = isObject(tooling) ? tooling.dies : undefined;
	if (own === undefined || (dies !== undefined && !isObject(dies))) return null;
	return [own, ...Object.keys(dies ?? {})];
}
