/** A small sound job file, to be changed one place at a time. */
export function plainJobFile() {
	return {
		pullbook: 'job/1',
		name: 'Fender bar',
		units: 'in' as string,
		tube: { material: '1020-dom' as unknown, od: 1.5 as unknown, wall: 0.12 as unknown, stock: 80 as unknown },
		tooling: { clr: 5 } as Record<string, unknown>,
		shape: {
			bends: [
				{ straight: 12, angle: 40, rotation: 0 },
				{ straight: 9, angle: 30, rotation: 90 },
			],
			last: 14,
		} as unknown,
	};
}

/** The value with one place in it replaced (or, with undefined, left out): `change(job, 'tube.od', 2)`. */
export function change(value: object, place: string, to: unknown): unknown {
	const copy = structuredClone(value) as Record<string, unknown>;
	const keys = place.split('.');
	const last = keys.pop() ?? '';
	let at: Record<string, unknown> = copy;
	for (const key of keys) {
		at[key] ??= {};
		at = at[key] as Record<string, unknown>;
	}
	if (to === undefined) delete at[last];
	else at[last] = to;
	return copy;
}
