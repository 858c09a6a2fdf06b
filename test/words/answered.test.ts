import { describe, expect, it } from 'vitest';
import { answered } from '../../src/session/log/answered.ts';
import { answeredWords, listedWords } from '../../src/words/answered.ts';
import { bendTo } from '../helpers/session/bend-to.ts';
import { begin, give, giveAll, open, type Run } from '../helpers/session/session-run.ts';
import { whyOf } from '../helpers/session/why.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const told = ({ state }: Run) => answeredWords(answered(state).at(-1)!, state.start.job);

/** The tube's first bend made as drawn and its second, down to its crown check. */
function toCrown(): Run {
	const first = give(bendTo(begin(hatJob()), 17), { do: 'accept' });
	return bendTo(first, open(first, 'set').target);
}

describe('an answer in words', () => {
	it('tells angles in degrees', () => {
		const set = give(begin(hatJob()), { ready: true });
		const { stop } = open(set, 'pull');
		expect(told(give(set, { loaded: stop }))).toBe(`bend 1 held at ${stop}° (stop ${stop}°)`);
	});

	it('in the list of readings has the mark and the turn that were asked for', () => {
		const first = give(bendTo(begin(hatJob()), 17), { do: 'accept' });
		const asked = open(first, 'set');
		const set = give(first, { ready: true, pointer: 0 });
		const { stop } = open(set, 'pull');
		const pulled = give(set, { loaded: stop });
		const said = `mark ${asked.mark.tape} in, turn 180° either way`;
		const listed = ({ state }: Run) => listedWords(answered(state).at(-1)!, state.start.job);
		expect(listed(set)).toBe(`${told(set)}; ${said}`);
		expect(listed(pulled)).toBe(`bend 2 held at ${stop}° (stop ${stop}°); ${said}`);
		expect(listed(give(pulled, { angle: open(pulled, 'measure').expect.angle }))).not.toContain('mark');
	});

	it('tells lengths and checks in the unit of the job', () => {
		expect(told(give(begin(plainJob()), { ready: true, mark: 20.125 }))).toMatch(
			/mark as made, from the start end of bend 1: 20 1\/8 in$/,
		);
		expect(told(give(begin(plainJob({ units: 'mm' })), { ready: true, length: 46 }))).toMatch(/length.*: 46 mm/);
		const crown = toCrown();
		expect(told(give(crown, { reading: open(crown, 'check').expect.value }))).toMatch(/check "crown": [\d/ ]+ in$/);
	});

	it('tells what else was measured by what it is of', () => {
		let run = give(bendTo(begin(hatJob()), 17), { do: 'accept' });
		const tellsOf = (kind: string, reading: number) => {
			run = give(run, { evidence: { kind, bend: 1, reading } });
			while ((run.outputs.at(-1) as { ask?: string }).ask === 'confirm') run = give(run, { keep: true });
			return told(run);
		};
		expect(tellsOf('farEndToMark', 77)).toMatch(/^far end to the mark of bend 1: 77 in/);
		expect(tellsOf('leg', 16)).toMatch(/^straight before bend 1: 16 in/);
		expect(tellsOf('mark', 16)).toMatch(/^mark of bend 1, from the start end: 16 in/);
		expect(tellsOf('rotation', 1)).toBe('plane of bend 1 to the one before: 1°');
	});

	it('tells what was doubted and set aside in the same unit, and the reason asks in it too', () => {
		const crown = toCrown();
		const { value } = open(crown, 'check').expect;
		const doubted = give(crown, { reading: 38 });
		expect(whyOf(open(doubted, 'confirm'))).toMatch(
			/^[\d/ ]+ in was expected from what is made\. This is [\d/ ]+ in away\. /,
		);
		const settled = give(doubted, { reading: value });
		expect(told(settled)).toMatch(/: [\d/ ]+ in, which counts; 38 in set aside$/);
		expect(whyOf(open(settled, 'decide'))).toMatch(/^Set aside: check "crown", 38 in\. /);
	});

	it('tells what was set aside at the decision and not again at the pull that follows it', () => {
		const crown = toCrown();
		const { value } = open(crown, 'check').expect;
		const decided = giveAll(crown, { reading: 38 }, { reading: value }, { do: 'pull' }, { ready: true });
		expect(whyOf(open(decided, 'pull'))).not.toContain('Set aside');
	});

	it('tells at the pull what was set aside with the tube in hand', () => {
		const set = begin(plainJob());
		const { fromStart } = open(set, 'set').mark;
		const seated = giveAll(set, { ready: true, mark: fromStart + 10 }, { reading: fromStart });
		expect(whyOf(open(seated, 'pull'))).toMatch(/^Set aside: mark/);
	});

	it('tells a corrected reading in the unit of the record that it corrects', () => {
		const crown = toCrown();
		const { value } = open(crown, 'check').expect;
		const entry = crown.state.entries.length + 1;
		const amended = giveAll(crown, { reading: value }, { amend: { entry, reading: value + 0.01 } });
		expect(told(amended)).toMatch(new RegExp(`^line ${entry} corrected: check is [\\d/ ]+ in(?:, not [\\d/ ]+ in)?$`));
	});
});
