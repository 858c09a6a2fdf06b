import { bendFigures } from '../../../src/review/plots.ts';
import { storyOf } from '../../../src/review/story.ts';
import type { Opened } from '../../../src/screen/review/review-port.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import { begin, give, type Run } from '../session/session-run.ts';
import { hatJob } from '../shop/hat.ts';

/** A whole session of the hat: one pull taken back, one number set aside, a note, one bend left short, the old numbers never kept. */
export function keptSession(): Opened {
	const job = hatJob({ notes: 'For the second boat.' });
	const states = [begin(job).state];
	let run: Run = begin(job);
	const say = (raw: unknown) => {
		const before = run.state;
		run = give(run, raw);
		if (run.state === before) throw new Error(`${JSON.stringify(raw)} was refused: ${JSON.stringify(run.outputs[0])}`);
		states.push(run.state);
	};
	say({ ready: true, note: 'tight clamp' });
	say({ loaded: stopOf(run) + 0.5 });
	say({ undo: true });
	say({ loaded: stopOf(run), released: 13.5 });
	say({ angles: [13, 16] });
	say({ reading: 13.1 });
	for (let count = 0; run.state.phase.at !== 'done'; count++) {
		if (count > 100) throw new Error('The session comes to no end.');
		say(answerTo(run.outputs.at(-1) as Ask));
	}
	const story = storyOf(states);
	return {
		id: '20310302-094000-ab12',
		started: '2031-03-02 09:40 +01:00',
		story,
		states,
		problem: null,
		time: () => '09:41:30',
		sessions: () => [
			[
				{ error: -0.4, pulls: 3 },
				{ error: 0.2, pulls: 2 },
				{ error: null, pulls: 1 },
			],
			[
				{ error: 0.1, pulls: 2 },
				{ error: -0.1, pulls: 1 },
				{ error: 0.6, pulls: 2 },
			],
			bendFigures(run.state),
		],
	};
}

const stopOf = (run: Run) => (run.outputs.at(-1) as { stop: number }).stop;

function answerTo(open: Ask): unknown {
	switch (open.ask) {
		case 'set':
			return { ready: true };
		case 'pull':
			return { loaded: open.stop };
		case 'measure':
			return { angle: Math.round(10 * (open.expect.angle - 0.1)) / 10 };
		case 'check':
			return { reading: Math.round(16 * open.expect.value) / 16 };
		case 'confirm':
			return { keep: true };
		case 'decide':
			return { do: open.advice === 'pull' ? 'pull' : 'accept' };
	}
}
