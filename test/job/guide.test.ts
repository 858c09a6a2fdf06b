import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { materialKeys } from '../../src/springback/materials.ts';
import { toldFaults } from '../helpers/disk/told-faults.ts';

type Raw = Record<string, unknown>;

const FOLDER = new URL('../../jobs/', import.meta.url);
const guide = readFileSync(new URL('README.md', FOLDER), 'utf8');
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const sample = (name: string) => readFileSync(new URL(name, FOLDER), 'utf8');
const arch: Raw = JSON.parse(sample('righting-arch.json'));

/** What the reader of job files says that a check may measure. */
const KINDS = kindsOf(readJob({ ...arch, checks: [{ name: 'of nothing' }] }));

function kindsOf(read: ReturnType<typeof readJob>): string[] {
	const faults = toldFaults(read).map(({ right }) => right);
	return /exactly one of (.*)$/.exec(faults.join('\n'))?.[1]?.split(', ') ?? [];
}

/** The job files' blocks, and the lines of them that say only what one field is. */
const blocks = [...guide.matchAll(/^```json\n([\s\S]*?)^```$/gm)].map(([, text]) => text!.trim());
const fieldLines = [
	...blocks.filter((text) => text.startsWith('"')).flatMap((text) => text.split('\n')),
	...[...guide.matchAll(/`("\w+": [^`]+)`/g)].map(([, text]) => text!),
];

/** A job that says what the line says. */
function jobWith(line: string): Raw {
	const field: Raw = JSON.parse(`{${line}}`);
	if (!KINDS.some((kind) => Object.hasOwn(field, kind))) return { ...arch, ...field };
	return { ...arch, checks: [{ name: 'as written', ...field }] };
}

/** Each object inside a job file, with its place. */
function objectsIn(value: unknown, at: string[] = []): { at: string[]; object: Raw }[] {
	if (typeof value !== 'object' || value === null) return [];
	const inner = Object.entries(value).flatMap(([key, item]) =>
		objectsIn(item, Array.isArray(value) ? at : [...at, key]),
	);
	return Array.isArray(value) ? inner : [{ at, object: value as Raw }, ...inner];
}

/** What the reader of job files says that it knows at each place, told by a key there that it does not know. */
function knownFields(raw: Raw): string[] {
	const job = structuredClone(raw);
	return objectsIn(job).flatMap(({ at, object }) => {
		object.unheard = 1;
		const read = readJob(job);
		delete object.unheard;
		const faults = toldFaults(read).filter((fault) => fault.at.endsWith('unheard'));
		const known = faults.flatMap(({ right }) => /known here: (.*)$/.exec(right)?.[1]?.split(', ') ?? []);
		return known.map((key) => [...at, key].join('.'));
	});
}

/** By its whole place, or, deeper in the file and for a list, by its name. */
function isNamed(field: string): boolean {
	if (guide.includes(`\`${field}\``)) return true;
	const own = /^(tube|tooling|trim|tolerance)\.\w+$/.test(field);
	return !own && new RegExp(`[\`"]${field.split('.').at(-1)}[\`"]`).test(guide);
}

/** A tube and a die in mm. */
const METRIC = { tube: { material: '1020-dom', od: 40, wall: 2 }, tooling: { clr: 150 } };

describe('the guide to job files', () => {
	it('shows the sample as it is', () => {
		expect(blocks).toContain(sample('handrail-knee.json').trim());
	});

	it('shows only lines that are taken', () => {
		expect(fieldLines.length).toBeGreaterThan(14);
		for (const line of fieldLines) expect(readJob(jobWith(line)), line).toHaveProperty('job');
	});

	it('shows every kind of check', () => {
		expect(KINDS.length).toBeGreaterThan(4);
		for (const kind of KINDS) expect(fieldLines.some((line) => line.startsWith(`"${kind}"`))).toBe(true);
	});

	it('names every field that is read', () => {
		const jobs = [...files.map((file): Raw => JSON.parse(sample(file))), ...fieldLines.map(jobWith)];
		const fields = new Set(jobs.flatMap(knownFields));
		expect(fields).toContain('tooling.markOffset');
		expect(fields).toContain('tolerance.direction');
		expect(fields).toContain('checks.drop.surface');
		const missing = [...fields].filter((field) => !isNamed(field));
		expect(missing).toEqual([]);
	});

	it('says what holds for a field that is left out', () => {
		const bare = { pullbook: 'job/1', name: 'Bare', tube: arch.tube, tooling: { clr: 6 }, shape: arch.shape };
		const rows = new Map(
			[...guide.matchAll(/^\| `([\w.]+)`.* \| ([^|]*) \|$/gm)].map(([, field, out]) => [field!, out!]),
		);
		const [inches, metric] = (['in', 'mm'] as const).map((units) => {
			const read = readJob({ ...bare, units, ...(units === 'mm' ? METRIC : {}) });
			if ('faults' in read) throw new Error(JSON.stringify(read.faults));
			return read.job;
		});
		const { tooling, tolerance, trim, risk } = inches!;
		expect(rows.get('tooling.bender')).toBe(`\`${tooling.bender}\``);
		for (const field of ['stretch', 'clamp', 'follow', 'markOffset', 'maxAngle', 'dialStep'] as const) {
			expect(rows.get(`tooling.${field}`), field).toBe(String(tooling[field]));
		}
		for (const field of ['under', 'rotation', 'direction'] as const) {
			expect(rows.get(`tolerance.${field}`), field).toBe(String(tolerance[field]));
		}
		expect([tooling.tape, metric!.tooling.tape]).toEqual([1 / 16, 1]);
		expect(rows.get('tooling.tape')).toBe('1/16 in or 1 mm');
		expect([tolerance.length, metric!.tolerance.length, tolerance.shape]).toEqual([1 / 16, 1.5, 1 / 4]);
		expect(rows.get('tolerance.length')).toBe('1/16 in or 1.5 mm');
		expect(rows.get('tolerance.shape')).toBe('four times `tolerance.length`');
		expect([rows.get('trim.start'), rows.get('risk')]).toEqual([String(trim.start), String(risk)]);
	});

	it('names every material', () => {
		for (const key of materialKeys) expect(guide).toContain(`\`${key}\``);
	});
});
