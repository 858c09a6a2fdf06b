import { expect, it } from 'vitest';
import { placedAt } from '../../../src/session/report/set-ups.ts';
import { bendAndSkip } from '../../helpers/session/bend-to.ts';
import { begin, give, open } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

it('where the tube lies is what its last set-up at the bend at work asked for, and follows what is taken back', () => {
	const start = begin(hatJob());
	expect(placedAt(start.state)).toBeNull();
	const first = open(start, 'set');
	const at = ({ bend, seat, mark, tubeTurn }: typeof first) => ({ bend, seat, mark, tubeTurn });
	let run = bendAndSkip(start, 17);
	expect(placedAt(run.state)).toEqual(at(first));
	const again = give(run, { do: 'pull' });
	const reset = give(again, { ready: true });
	expect(placedAt(reset.state)).toEqual(at(open(again, 'set')));
	run = give(run, { do: 'accept' });
	const second = open(run, 'set');
	expect(placedAt(run.state)).toBeNull();
	run = give(run, { ready: true });
	expect(placedAt(run.state)).toEqual(at(second));
	while (run.state.bend === 2) run = give(run, { undo: true });
	expect(placedAt(run.state)).toEqual(at(first));
});
