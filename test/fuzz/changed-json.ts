import fc from 'fast-check';

/** A change of a JSON value: at which of its places, counted through, what is put, or nothing; `key`: what the place is called from then on. */
export interface Change {
	at: number;
	to?: unknown;
	key?: string;
}

const NASTY = [
	0,
	-1,
	1e-320,
	1e-9,
	0.5,
	89.9999,
	90,
	180,
	360,
	1e6,
	1e15,
	1e308,
	'',
	' ',
	'1e999',
	'3/0',
	'9 3/8',
	'-1',
	'1/64',
	'('.repeat(300),
	'\u001b[2J',
	'\u202e',
	'n'.repeat(3000),
	true,
	null,
	[],
	{},
	[[]],
	{ die: 1 },
	[0, 0, 0],
	'__proto__',
	'in',
	'mm',
	'far',
	1,
	2,
	3,
	200,
	7.5,
];

const key = fc.constantFrom(
	'name',
	'angle',
	'straight',
	'rotation',
	'die',
	'od',
	'wall',
	'__proto__',
	'constructor',
	'length',
	'',
);

export const changes = (most: number): fc.Arbitrary<Change[]> =>
	fc.array(
		fc.record(
			{
				at: fc.nat(400),
				to: fc.oneof(
					fc.constantFrom(...NASTY),
					fc.double({ noNaN: true, noDefaultInfinity: true }),
					fc.jsonValue({ maxDepth: 2 }),
				),
				key,
			},
			{ requiredKeys: ['at'] },
		),
		{ maxLength: most },
	);

/** The value with these changes made, one after the other. */
export function changed(value: unknown, list: readonly Change[]): unknown {
	const root = { value: structuredClone(value) } as Record<string, unknown>;
	for (const { to: told, ...change } of list) {
		// What is put is another one each time: a later change may put it into itself.
		const to = structuredClone(told);
		const places = placesIn(root);
		const place = places[change.at % places.length];
		if (place === undefined) continue;
		const { holder, at } = place;
		if (to === undefined && change.key === undefined) {
			if (Array.isArray(holder)) holder.splice(Number(at), 1);
			else delete (holder as Record<string, unknown>)[at];
		} else if (change.key !== undefined && !Array.isArray(holder) && holder !== root)
			Object.defineProperty(holder, change.key, {
				value: to ?? holder[at],
				enumerable: true,
				configurable: true,
				writable: true,
			});
		else (holder as Record<string, unknown>)[at] = to;
	}
	return root.value;
}

interface Place {
	holder: Record<string, unknown> | unknown[];
	at: string;
}

function placesIn(value: unknown): Place[] {
	if (typeof value !== 'object' || value === null) return [];
	const holder = value as Record<string, unknown>;
	return Object.keys(holder).flatMap((at) => [{ holder, at }, ...placesIn(holder[at])]);
}
