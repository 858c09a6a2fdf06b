import type { CorrectionStory } from '../review/story.ts';
import type { Job } from '../tube/job.ts';
import { angle, exactAngle, fine, tape } from './numbers.ts';
import { TAKEN_BACK } from './story-bend.ts';

/** A correction: what it came after, what it changed, and what it gained. A sentence or a bend's line each. */
export function correctionWords({ correction, plan, void: gone }: CorrectionStory, job: Job): string[] {
	const { after, remaining, predicted, without } = correction;
	const what = 'bend' in after ? `bend ${after.bend}` : `line ${after.entry} of the log`;
	const back = gone ? TAKEN_BACK : '';
	const kept = plan === 'old' ? ' The old numbers were kept.' : '';
	return [
		`Corrected after ${what}.${kept}${back}`,
		...remaining.map(({ bend, was, ...now }) => {
			const changed = [
				change('mark', tape(was.fromStart, job), tape(now.fromStart, job)),
				change('rotation', angle(was.rotation), angle(now.rotation)),
				change('bend', exactAngle(round(was.angle)), exactAngle(round(now.angle))),
			].filter((text) => text !== '');
			return `bend ${bend}: ${changed.length === 0 ? 'nothing that an instrument shows' : changed.join(', ')}`;
		}),
		`The far end is off by ${fine(predicted.endOffset, job)} with these, by ${fine(without.endOffset, job)} with the drawing's numbers.`,
	];
}

const round = (degrees: number): number => Math.round(10 * degrees) / 10;

function change(name: string, was: string, now: string): string {
	return was === now ? '' : `${name} ${now} (was ${was})`;
}
