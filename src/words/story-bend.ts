import type { BendDone, BendStep, BendStory } from '../review/story.ts';
import type { PullView, SetUpView } from '../session/report/set-ups.ts';
import { stages } from '../session/report/stages.ts';
import type { Job } from '../tube/job.ts';
import { trimmed } from '../units/format.ts';
import type { Wording } from './lengths.ts';
import { listed } from './listed.ts';
import { angle, angleGiveOrTake, dial, readingValue } from './numbers.ts';
import { EVIDENCE_OF, READINGS } from './readings.ts';
import { setUpWords } from './set-up.ts';

/** Stands behind whatever is in the log and no longer counts. */
export const TAKEN_BACK = '  (taken back)';

/** What came of a bend, and what was wanted: `made 15.3°, give or take 0.2°; wanted 15.5 (15 to 16), drawing 15.5`. */
export function bendOutcomeWords({ made, target, low, high, design }: BendStory): string {
	const came = made ? `made ${angleGiveOrTake(made)}` : 'not finished';
	const aim = `wanted ${angle(target)} (${trimmed(low, 1)} to ${trimmed(high, 1)})`;
	return `${came}; ${aim}, drawing ${angle(design)}`;
}

/** One line of a bend's story. */
export function bendStepWords(step: BendStep, job: Job): string {
	return `${doneWords(step, job)}${step.void ? TAKEN_BACK : ''}`;
}

function doneWords(done: BendDone, job: Job): string {
	switch (done.step) {
		case 'set':
			return setUpLine(done.setUp, job);
		case 'pull':
			return pullLine(done.pull);
		case 'still':
			return 'the tube never left the die';
		case 'out':
			return 'the tube was taken out of the die';
		case 'read':
			return readWords(done, job);
		case 'aside': {
			const { reading, values } = done;
			const told = listed(values.map((value) => readingValue(value, reading.of, reading.name, job)));
			const right = readingValue(reading.value, reading.of, reading.name, job);
			return `set aside: ${READINGS[reading.of]} ${told}; ${right} counts`;
		}
		case 'amended': {
			const { line, reading, was } = done;
			const told = (value: number) => readingValue(value, reading.of, reading.name, job);
			const before = was === null ? '' : `, not ${told(was)}`;
			return `corrected: ${READINGS[reading.of]} of line ${line} is ${told(reading.value)}${before}`;
		}
		case 'skipped':
			return 'not measured: went on by the dial';
		case 'again':
			return 'to be pulled again';
		case 'opened':
			return 'opened a little';
		case 'taken':
			return 'taken';
		case 'reopened':
			return done.how === 'pull' ? 'went back to it, to pull it again' : 'went back to it, to open it a little';
	}
}

function readWords({ reading }: Extract<BendDone, { step: 'read' }>, job: Wording): string {
	const { of, evidence, bend, name } = reading;
	const what = evidence && bend ? EVIDENCE_OF[evidence](bend) : READINGS[of];
	return `${what}: ${readingValue(reading.value, of, name, job)}`;
}

function setUpLine(setUp: SetUpView, job: Job): string {
	const asked = setUpWords(setUp, job);
	return `set-up ${setUp.seat}${asked === '' ? '' : `: ${asked}`}`;
}

function pullLine(pull: PullView): string {
	const [pulled = [], ...opened] = stages(pull);
	const read = (word: string, readings: readonly number[]) =>
		readings.length > 0 ? `${word}${readings.map((x) => ` ${dial(x)}`).join(',')}` : '';
	const measured = `${read(', measured', pulled)}${opened.map((readings) => read(', opened to', readings)).join('')}`;
	const released = pull.released === null ? '' : `, ${dial(pull.released)} after release`;
	const pointer = pull.pointer === null ? '' : `, snug ${dial(pull.pointer)}`;
	return `set-up ${pull.seat}${pointer}: stop ${dial(pull.stop)}, held ${dial(pull.loaded)}${released}${measured}`;
}
