/** Reads `tooling`: the job file governs, then what is kept of the bender and die it names, then the defaults. */
import { hasKey } from '../tube/as-json.ts';
import type { Tooling, Units } from '../tube/job.ts';
import type { KeptTooling } from '../tube/kept-tooling.ts';
import { FIELD_NAMES, type FieldName, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { trimmed } from '../units/format.ts';
import { readDies } from './dies.ts';
import { type Report, valued } from './fault.ts';
import { anything, type FieldReader, readObject, text } from './field-readers.ts';
import { figureReader } from './tooling-reader.ts';

/**
 * What the program keeps under the names of a bender and a die, lengths in `units`; undefined when neither is kept.
 * Both names are as the job gives them or as they default.
 */
export type ToolingLookup = (bender: string, die: string, units: Units) => KeptTooling | undefined;

export type ReadTooling = Partial<Tooling>;

function readersFor(units: Units) {
	const figures = FIELD_NAMES.map((name) => [name, figureReader(name, units)] as const);
	return {
		bender: text('bender'),
		die: text('die'),
		...(Object.fromEntries(figures) as Record<FieldName, FieldReader<number>>),
		dies: anything,
	};
}

/**
 * `fromBender` has the place of each value that the job leaves to the bender and die. A value that the job gives but that
 * is faulty stays out of `tooling`, and no other takes its place.
 */
export function readTooling(
	value: unknown,
	od: number | undefined,
	units: Units,
	lookup: ToolingLookup,
	report: Report,
): { tooling: ReadTooling; fromBender: string[] } {
	const given = value === undefined ? {} : value;
	const { dies: further, ...read } = readObject(given, 'tooling', readersFor(units), [], report);
	const wrote = (key: string) => hasKey(given, key);
	const bender = read.bender ?? (wrote('bender') ? undefined : 'shop');
	const die = read.die ?? (wrote('die') ? undefined : dieName(read.clr, od));
	const kept = bender !== undefined && die !== undefined ? lookup(bender, die, units) : undefined;
	const tooling: ReadTooling = { ...read, bender, die };
	const fromBender: string[] = [];
	for (const key of FIELD_NAMES) {
		if (wrote(key)) continue;
		const own = kept?.[key] ?? null;
		if (own !== null) fromBender.push(`tooling.${key}`);
		Object.assign(tooling, { [key]: own ?? TOOLING_FIELDS[key].usual(units) });
	}
	const keptOf = (name: string) => (bender === undefined ? undefined : lookup(bender, name, units));
	const keptOfOwn = (field: string) => fromBender.includes(`tooling.${field}`);
	const { dies, fromBender: more } = readDies(further, { own: die, od, units, kept: keptOf, wrote, keptOfOwn, report });
	if (dies) tooling.dies = dies;
	if (tooling.clr === undefined && !wrote('clr')) reportMissingRadius(read.die, bender, report);
	else reportTightRadius(tooling.clr, od, fromBender.includes('tooling.clr'), report);
	return { tooling, fromBender: [...fromBender, ...more] };
}

/** The name under which springback is learned where the job gives none. */
function dieName(clr: number | undefined, od: number | undefined): string | undefined {
	return clr === undefined || od === undefined ? undefined : `${trimmed(clr, 4)} clr ${trimmed(od, 4)} od`;
}

function reportMissingRadius(die: string | undefined, bender: string | undefined, report: Report): void {
	const right = { code: 'radius-of-die', kept: die === undefined ? null : { bender, die } } as const;
	report({ at: 'tooling.clr', found: { code: 'nothing' }, right });
}

/** A center line bent tighter than the tube's own half would turn its inside out. */
function reportTightRadius(clr: number | undefined, od: number | undefined, kept: boolean, report: Report): void {
	if (clr === undefined || od === undefined || clr >= od / 2) return;
	const found = kept ? ({ code: 'value', value: clr, kept } as const) : valued(clr);
	report({ at: 'tooling.clr', found, right: { code: 'radius-at-least', least: od / 2 } });
}
