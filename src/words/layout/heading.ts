import { copedEnds } from '../../tube/cope.ts';
import { diesOf, toolingOfDie } from '../../tube/dies.ts';
import type { Job } from '../../tube/job.ts';
import type { LayoutDocument } from '../../tube/layout.ts';
import { bareLength } from '../../units/format.ts';
import { formatTape } from '../../units/tape.ts';
import { bentAsWords } from '../bent-as.ts';
import { copeDoubts, copeWords } from '../cope.ts';
import { foreignName } from '../foreign.ts';
import { unitName } from '../lengths.ts';
import { tubeWords } from '../tube-size.ts';

/** Tables print lengths without their unit, which the heading names. */
export const bare = (length: number, { units }: Pick<Job, 'units'>): string => bareLength(length, units);

/** What is bent and on what, a sentence each. `said`: sentences on what the layout rests on. */
export function aboutWords(job: Job, said: readonly string[]): string[] {
	const { tube, tooling } = job;
	const as = bentAsWords(job);
	return [
		`${foreignName(job.name)} (lengths in ${unitName(job.units)})`,
		`Tube ${tubeWords(tube)}. Bender "${foreignName(tooling.bender)}", die ` +
			`"${foreignName(tooling.die)}", center-line radius ${bare(tooling.clr, job)}.`,
		...otherDies(job),
		...(as === null ? [] : [as]),
		...said,
	];
}

/** The other dies that bends are bent on. */
function otherDies(job: Job): string[] {
	return diesOf(job)
		.slice(1)
		.map((die) => {
			const { clr } = toolingOfDie(job, die);
			return `Another die in this tube: "${foreignName(die)}", center-line radius ${bare(clr, job)}.`;
		});
}

/** How long to cut it, what that is for, and how large the finished tube is, a sentence each. */
export function cutLengthWords(job: Job, { cutLength, developedLength, overall }: LayoutDocument): string[] {
	const { tooling, trim } = job;
	const coped = copedEnds(job);
	const length = (value: number) => bare(value, job);
	return [
		`Cut the tube to ${formatTape(cutLength, tooling.tape, job.units)} (${length(cutLength)}): ` +
			`${length(developedLength)} for the shape, trim of ${length(trim.start)} at the start end and ` +
			`${length(trim.end)} at the far end${coped.some(({ past }) => past > 0) ? ', what the copes need in it' : ''}.`,
		...coped.flatMap((end) => [copeWords(end, job), ...copeDoubts(end, job)]),
		'The start end is the one that goes through the clamp first.',
		`Finished size, outside to outside: ${length(overall.x)} along straight 1, ${length(overall.y)} toward the inside of bend 1, ` +
			`${length(overall.z)} square to both.`,
	];
}
