import { hasKey, isObject } from '../tube/as-json.ts';
/** Reads `tooling.dies`: further dies of the same bender, by their names. */
import { furtherPlace } from '../tube/dies.ts';
import type { DieFields, Tooling, Units } from '../tube/job.ts';
import type { KeptTooling } from '../tube/kept-tooling.ts';
import { DIE_FIELDS, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { inside, type Report, valued } from './fault.ts';
import { readObject, text } from './field-readers.ts';
import { figureReader } from './tooling-reader.ts';

const AT = 'tooling.dies';

/** No bender has more dies at hand for one tube. */
const MOST_DIES = 20;

/** What further dies are read by. */
export interface DiesBy {
	/** The name of the job's own die, and the tube's diameter; each undefined where it is not known. */
	own: string | undefined;
	od: number | undefined;
	units: Units;
	/** What is kept of a die of the job's bender. */
	kept(name: string): KeptTooling | undefined;
	/** Whether the job file says a figure of its tooling itself; and whether it is kept of the job's own die. */
	wrote(field: string): boolean;
	keptOfOwn(field: string): boolean;
	report: Report;
}

export interface ReadDies {
	dies: Tooling['dies'];
	/** The place of each value that comes from what is kept of a die. */
	fromBender: string[];
}

/** What is absent of a die is what is kept of it, else the job's own. */
export function readDies(value: unknown, by: DiesBy): ReadDies {
	const { own, od, units, report } = by;
	const none = { dies: undefined, fromBender: [] };
	if (value === undefined) return none;
	if (!isObject(value) || Object.keys(value).length > MOST_DIES) {
		report({ at: AT, found: valued(value), right: { code: 'dies', most: MOST_DIES } });
		return none;
	}
	const readers = Object.fromEntries(DIE_FIELDS.map((name) => [name, figureReader(name, units)] as const));
	const fromBender: string[] = [];
	const read = Object.entries(value).map(([name, die]) => {
		const at = inside(AT, name);
		reportName(name, own, at, report);
		const given: Partial<DieFields> = readObject(die, at, readers, [], report);
		const wrote = (field: string) => hasKey(die, field);
		const filled = filledIn(name, wrote, by);
		fromBender.push(...filled.fromBender);
		const fields = { ...given, ...filled.fields };
		reportTightDie(fields.clr, od, at, report);
		return [name, fields] as const;
	});
	return { dies: read.length === 0 ? undefined : Object.fromEntries(read), fromBender };
}

/** Told by a test piece, of the one die that it was bent on. */
const OF_ONE_DIE: ReadonlySet<string> = new Set(['growth', 'stretch', 'markOffset']);

/** What a die's own entry does not say and the job's tooling does not decide. */
function filledIn(
	name: string,
	said: (field: string) => boolean,
	{ kept, wrote, keptOfOwn, units }: DiesBy,
): { fields: Partial<DieFields>; fromBender: string[] } {
	const known = kept(name);
	const fields: Partial<Record<keyof DieFields, number | null>> = {};
	const fromBender: string[] = [];
	for (const field of DIE_FIELDS) {
		if (said(field)) continue;
		const value = known?.[field] ?? null;
		const jobDecides = wrote(field) && TOOLING_FIELDS[field].with.includes('machine');
		if (value !== null && !jobDecides) {
			fields[field] = value;
			fromBender.push(furtherPlace(name, field));
		} else if (OF_ONE_DIE.has(field) && keptOfOwn(field)) fields[field] = TOOLING_FIELDS[field].usual(units) ?? null;
	}
	return { fields: fields as Partial<DieFields>, fromBender };
}

function reportName(name: string, own: string | undefined, at: string, report: Report): void {
	const result = text('further-die')(name);
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
