import type { CorrectionStory } from '../review/story.ts';
import type { Correction } from '../session/protocol/notes.ts';
import type { Job } from '../tube/job.ts';
import { capital } from '../units/format.ts';
import { angle, fine, tape } from './numbers.ts';
import { TAKEN_BACK } from './story-bend.ts';

/** A correction: what it came after, what it changed, and what it gained. A sentence or a bend's line each. */
export function correctionWords(story: CorrectionStory, job: Job): string[] {
	const { correction } = story;
	return [
		afterWords(story),
		...correction.remaining.map((each) => {
			const changes = changeWords(each, job);
			return `bend ${each.bend}: ${changes === '' ? 'nothing that an instrument shows' : changes}`;
		}),
		gainWords(correction, job),
	];
}

/** The same in as few words as it takes; null where it changed nothing that an instrument shows. */
export function briefCorrectionWords(story: CorrectionStory, job: Job): string | null {
	const { correction } = story;
	const changes = correction.remaining.flatMap((each) => {
		const words = changeWords(each, job);
		return words === '' ? [] : [`bend ${each.bend}: ${words}`];
	});
	if (changes.length === 0) return null;
	return `${afterWords(story)} ${capital(changes.join('; '))}. ${gainWords(correction, job)}`;
}

function afterWords({ correction: { after }, plan, void: gone }: CorrectionStory): string {
	const what = 'bend' in after ? `bend ${after.bend}` : `line ${after.entry} of the log`;
	const kept = plan === 'old' ? ' The old numbers were kept.' : '';
	return `Corrected after ${what}.${kept}${gone ? TAKEN_BACK : ''}`;
}

function changeWords({ was, ...now }: Correction['remaining'][number], job: Job): string {
	const changed = [
		nowAndWas('mark', tape(was.fromStart, job), tape(now.fromStart, job)),
		nowAndWas('rotation', angle(was.rotation), angle(now.rotation)),
		nowAndWas('bend', angle(was.angle), angle(now.angle)),
	];
	return changed.filter((text) => text !== '').join(', ');
}

function gainWords({ predicted, without }: Correction, job: Job): string {
	return `The far end is off by ${fine(predicted.endOffset, job)} with these, by ${fine(without.endOffset, job)} with the drawing's numbers.`;
}

function nowAndWas(name: string, was: string, now: string): string {
	return was === now ? '' : `${name} ${now} (was ${was})`;
}
