import { expect } from 'vitest';
import { INCH } from './twin.ts';

/** How far two that should be the same may differ: what sums in another order round to. */
const SAME = 1e-9;

/** Texts that name a length, a file or a time. */
const LEFT_OUT = new Set(['tape', 'units', 'at', 'log']);

/**
 * Holds that two documents agree, one in inches and one in millimeters: every number the same, or 25.4 times as large, and of one name and kind
 * always the same way.
 */
export class Agreement {
	private readonly ways = new Map<string, 'same' | 'length'>();
	compared = 0;

	hold(inches: unknown, mm: unknown, path = '', kind = ''): void {
		if (typeof inches === 'number' && typeof mm === 'number') this.numbers(inches, mm, path, kind);
		else if (Array.isArray(inches) && Array.isArray(mm)) {
			const [one, other] = [inches.filter(isOfBoth), mm.filter(isOfBoth)];
			expect(other.length, path).toBe(one.length);
			for (const [i, each] of one.entries()) this.hold(each, other[i], `${path}[]`, kind);
		} else if (isObject(inches) && isObject(mm)) {
			expect(Object.keys(mm).sort(), path).toEqual(Object.keys(inches).sort());
			const own = [inches.kind ?? '', inches.of ?? '', inches.code ?? '', inches.name ?? '']
				.filter((each) => typeof each === 'string')
				.join(' ')
				.trim();
			for (const [key, each] of Object.entries(inches))
				if (!LEFT_OUT.has(key)) this.hold(each, mm[key], `${path}.${key}`, own === '' ? kind : own);
		} else expect(mm, path).toEqual(inches);
	}

	private numbers(inches: number, mm: number, path: string, kind: string): void {
		this.compared++;
		if (Math.abs(inches) < SAME && Math.abs(mm) < INCH * SAME) return;
		const may = SAME * Math.max(1, Math.abs(inches));
		const isSame = Math.abs(mm - inches) <= may;
		const isScaled = Math.abs(mm / INCH - inches) <= may;
		if (isSame && isScaled) return;
		const name = `${path} ${kind}`;
		if (!isSame && !isScaled)
			throw new Error(`${name}: ${inches} in inches, ${mm} in millimeters, which are ${mm / INCH} in`);
		const way = isSame ? 'same' : 'length';
		expect(this.ways.get(name) ?? way, name).toBe(way);
		this.ways.set(name, way);
	}

	wayOf(name: string): string | undefined {
		return this.ways.get(name);
	}
}

function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A slip by ten is another one on a tape in inches than on one in millimeters. */
function isOfBoth(value: unknown): boolean {
	return !isObject(value) || value.code !== 'slip';
}
