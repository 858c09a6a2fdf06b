import type { Action } from '../session/protocol/action.ts';
import type { Ask } from '../session/protocol/asks.ts';
import { keyed } from './keyed.ts';
import type { Draw } from './random.ts';
import type { Sight } from './station.ts';
import { tellsPointer, type World } from './world.ts';

/** What the simulated person writes where he gives the tube up at a bend. */
export type WhyScrapped = (bend: number) => string;

/** A simulated person: keys what he sees, now and then wrongly, reads again when asked to, and takes the advice. */
export function operatorAnswer(ask: Ask, sight: Sight, world: World, draw: Draw, why: WhyScrapped): Action {
	const key = (value: number | undefined) => keyed(value ?? 0, world, draw);
	switch (ask.ask) {
		case 'set': {
			const { length } = sight;
			const pointer = tellsPointer(world) ? { pointer: key(sight.pointer) } : {};
			return { do: 'ready', ...pointer, ...(length === undefined ? {} : { length }) };
		}
		case 'pull':
			return {
				do: 'loaded',
				loaded: Math.max(0, key(sight.loaded)),
				...(world.operator.readsRelease ? { released: key(sight.released) } : {}),
			};
		case 'measure':
			return { do: 'angles', angles: [Math.max(0, key(sight.reading))] };
		case 'confirm':
		case 'check':
			return { do: 'reading', reading: sight.reading ?? 0 };
		case 'decide':
			return decision(ask, sight, key, why);
	}
}

function decision(
	{ advice, bend, of }: Extract<Ask, { ask: 'decide' }>,
	{ reading = 0 }: Sight,
	key: (value: number) => number,
	why: WhyScrapped,
): Action {
	if (advice === 'measure' && typeof of === 'object') {
		if (of.kind !== 'angle') return { do: 'reading', reading };
		return { do: 'evidence', kind: 'angle', bend: of.bend ?? bend, reading: Math.max(0, key(reading)) };
	}
	if (advice === 'scrap') return { do: 'scrap', why: why(bend) };
	// Going back is the person's choice: a practice run ends sooner without it.
	if (advice === 'reopen') return { do: 'accept' };
	return { do: advice === 'measure' ? 'accept' : advice };
}
