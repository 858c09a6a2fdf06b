import { expect, it } from 'vitest';
import { stages } from '../../src/session/report/stages.ts';
import { sessionView } from '../../src/session/report/views.ts';
import { bendAndSkip } from '../helpers/session/bend-to.ts';
import { begin, give, type Run } from '../helpers/session/session-run.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const stands = (run: Run) =>
	(run.outputs.at(-1) as { ask: string }).ask === 'confirm' ? give(run, { keep: true }) : run;

it('what a pull led to and what the bend was after each opening stay apart', () => {
	const over = bendAndSkip(begin(plainJob()), 92);
	const once = stands(give(give(over, { do: 'relieve' }), { angle: 91 }));
	const twice = stands(give(give(once, { do: 'relieve' }), { angle: 90.2 }));
	const of = (run: Run) => stages(sessionView(run.state).bends[0]!.pulls.at(-1)!);
	const [pulled] = of(over);
	expect(of(over)).toHaveLength(1);
	expect(of(once)).toEqual([pulled, [91]]);
	expect(of(twice)).toEqual([pulled, [91], [90.2]]);
});
