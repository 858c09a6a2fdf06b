/** Reads `tooling`: the job file governs, then what is kept of the bender and die it names, then the defaults. */
import type { Tooling, Units } from '../tube/job.ts';
import type { KeptTooling } from '../tube/kept-tooling.ts';
import { type Report, show } from './fault.ts';
import { length, number, readObject, text } from './fields.ts';

/**
 * What the program keeps under the names of a bender and a die, lengths in `units`; undefined when neither is kept.
 * Both names are as the job gives them or as they default.
 */
export type ToolingLookup = (bender: string, die: string, units: Units) => KeptTooling | undefined;

export type ReadTooling = Partial<Tooling>;

type Value = keyof KeptTooling;

/** What holds where neither the job nor a kept bender says more; `clr` has no default. */
const DEFAULTS: Readonly<Record<Units, Omit<Tooling, 'bender' | 'die' | 'clr'>>> = {
	in: defaults(1 / 16),
	mm: defaults(1),
};

function defaults(tape: number) {
	return {
		growth: null,
		stretch: 0,
		clamp: 0,
		follow: 0,
		markOffset: 0,
		maxAngle: 180,
		dialStep: 0.5,
		tape,
		floor: null,
	};
}

function schemasFor(units: Units) {
	const room = length(units, { least: 0 });
	return {
		bender: text("the bender's name"),
		die: text("the die's name"),
		clr: length(units, { above: 0 }),
		growth: number('the finished radius as a multiple of the die radius', { least: 0.5, most: 2 }),
		stretch: number('the part by which an arc comes out longer', { above: -0.5, below: 0.5 }),
		clamp: room,
		follow: room,
		markOffset: length(units),
		maxAngle: number('the largest dial angle in degrees', { above: 0, most: 360 }),
		dialStep: number('the smallest dial division in degrees', { above: 0, most: 45 }),
		tape: length(units, { above: 0 }),
		floor: room,
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
	const read: ReadTooling = readObject(given, 'tooling', schemasFor(units), [], report);
	const wrote = (key: string) => typeof given === 'object' && given !== null && Object.hasOwn(given, key);
	const bender = read.bender ?? (wrote('bender') ? undefined : 'shop');
	const die = read.die ?? (wrote('die') ? undefined : dieName(read.clr, od));
	const kept = bender !== undefined && die !== undefined ? lookup(bender, die, units) : undefined;
	const tooling: ReadTooling = { ...read, bender, die };
	const fromBender: string[] = [];
	for (const key of ['clr', ...Object.keys(DEFAULTS[units])] as Value[]) {
		if (wrote(key)) continue;
		const own = kept?.[key] ?? null;
		if (own !== null) fromBender.push(`tooling.${key}`);
		Object.assign(tooling, { [key]: own ?? (key === 'clr' ? undefined : DEFAULTS[units][key]) });
	}
	if (tooling.clr === undefined && !wrote('clr')) reportMissingRadius(read.die, bender, report);
	else reportTightRadius(tooling.clr, od, fromBender.includes('tooling.clr'), report);
	return { tooling, fromBender };
}

/** The name under which springback is learned where the job gives none. */
function dieName(clr: number | undefined, od: number | undefined): string | undefined {
	return clr === undefined || od === undefined ? undefined : `${short(clr)} clr ${short(od)} od`;
}

function short(value: number): string {
	return String(Number(value.toFixed(4)));
}

function reportMissingRadius(die: string | undefined, bender: string | undefined, report: Report): void {
	const kept = die === undefined ? '' : `, or a bender "${bender}" and die "${die}" set up in the program with one`;
	const right = `the centre-line radius of the die, a length above 0${kept}`;
	report({ at: 'tooling.clr', found: 'nothing', right });
}

/** A centre line bent tighter than the tube's own half would turn its inside out. */
function reportTightRadius(clr: number | undefined, od: number | undefined, kept: boolean, report: Report): void {
	if (clr === undefined || od === undefined || clr >= od / 2) return;
	const found = kept ? `${show(clr)}, kept with the bender and die` : show(clr);
	report({ at: 'tooling.clr', found, right: `a radius of at least half the outside diameter, ${od / 2}` });
}
