import { at } from '../maths/list.ts';
import { isInBand } from '../tube/tolerance.ts';
import { oneOrMore } from './counted.ts';
import { tubeSize } from './tube-size.ts';
/** What stands on a session's record. */

import type { Imported } from '../journal/import-mark.ts';
import type { State } from '../session/log/state.ts';
import { cutsOf, finishList } from '../session/report/finish-list.ts';
import { tellsMostOf, verdictOf } from '../session/report/verdict.ts';
import type { SessionView } from '../session/report/views.ts';
import { diesAtWork, toolingOfDie } from '../tube/dies.ts';
import { pieceWords } from './batch.ts';
import { cutOffWords, finishWords, isCut } from './finish.ts';
import { foreign, foreignName } from './foreign.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { about, angle, dial, exactAngle, fine, readingSpread, shortOrOver, tape } from './numbers.ts';
import { importedWords, STATUS_WORDS } from './session-list.ts';
import { invitation, outsideWords, verdictWords } from './verdict.ts';

export const RECORD = {
	notRead: 'not read',
	title: 'record',
	outcome: 'What came of it',
	bends: 'Bends, as drawn and as made',
	made: 'The tube as made; the broken line is the drawing',
	planned: 'The tube as far as it was made, the rest as planned; the broken line is the drawing',
	checks: 'Checks',
	pulls: 'Every pull',
	corrections: 'Corrections: what the bends still to come were given',
	events: 'What else happened',
	open: 'Not measured, and left to do',
	cautions: 'Cautions',
	log: 'The log that this was made from',
	none: 'Nothing.',
	asTold:
		'Where aimed at differs from drawn, it was moved to what the rest of the tube needs. Marks and rotations count as asked for, but where it is told below that they were set otherwise. The far end and the straights are worked out from the readings; nobody measured them.',
	columns: {
		bend: 'bend',
		drawn: 'drawn',
		aimed: 'aimed at',
		made: 'made',
		giveOrTake: 'give or take',
		verdict: 'against what was aimed at',
		inside: 'verdict',
		rotation: 'rotation drawn',
		rotationMade: 'rotation made',
		straight: 'straight before drawn',
		straightMade: 'straight before made',
		check: 'check',
		read: 'read',
		within: 'within',
		off: 'off',
		line: 'line of the log',
		setUp: 'set-up',
		snug: 'snug',
		stop: 'stop',
		held: 'held',
		released: 'after release',
		measured: 'measured',
		remark: 'remark',
		mark: 'mark drawn',
		markMade: 'mark set',
		time: 'time',
		what: 'what',
	},
} as const;

/** What the record is of, each with its name. */
export function recordHead(
	view: SessionView,
	{ program, simulated }: State['start'],
	imported: Imported | null,
	clock: WallClock,
): (readonly [name: string, value: string])[] {
	const { job, piece, quantity = 1 } = view;
	const { tube, tooling, units } = job;
	const dies = diesAtWork(job).map((die) => `${foreignName(die)}, radius ${tape(toolingOfDie(job, die).clr, job)}`);
	return [
		['Session', foreignName(view.id)],
		['State', `${STATUS_WORDS[view.status]}${simulated === undefined ? '' : ', simulated'}`],
		['Begun', foreign(localMinute(view.started, clock))],
		['Ended', view.ended === null ? '-' : foreign(localMinute(view.ended, clock))],
		['Tube', `${tubeSize(tube)} ${units}, ${foreignName(tube.material.name)}`],
		['Heat', view.heat === undefined ? 'not given' : foreignName(view.heat)],
		['Bender', `${foreignName(tooling.bender)}${simulated === undefined ? '' : ', simulated'}`],
		[dies.length === 1 ? 'Die' : 'Dies', dies.join('; ')],
		...(piece === undefined ? [] : [['Batch', pieceWords({ number: piece, wanted: quantity })] as const]),
		...(imported === null ? [] : [['Bent elsewhere', importedWords(imported, clock)] as const]),
		['Program', `pullbook ${foreignName(program)}`],
	];
}

/** Whether the tube fits and how well that is known, or why nobody can say. */
export function outcomeWords(state: State, { job, asBuilt, status, bends }: SessionView): string[] {
	const { phase } = state.finished ?? state;
	if (phase.at === 'done' && phase.scrapped !== null) return [`The tube was scrapped: ${foreign(phase.scrapped)}.`];
	const off = `${fine(asBuilt.endOffset, job)} from its place and ${angle(asBuilt.endAngle)} from its direction`;
	const verdict = status === 'done' ? verdictOf(state) : null;
	if (verdict === null) {
		const left = bends.filter(({ made }) => made === null).length;
		if (left === bends.length) return ['The tube is not finished. No bend has been taken yet.'];
		const rest =
			left === 0
				? 'By the readings so far'
				: `If the ${left === 1 ? 'bend that is left ends' : 'bends that are left end'} as aimed at`;
		return [`The tube is not finished. ${rest}, the far end ${left === 0 ? 'is' : 'will be'} ${off}.`];
	}
	const { direction, shape: allowed } = job.tolerance;
	const { sd, fits, chance, shape } = verdict;
	const invited = invitation(fits, chance, tellsMostOf(state, verdict));
	return [
		`${verdictWords(fits, chance)} ${outsideWords(outsideOf(job, bends), job)}`,
		`The far end is ${off}, give or take ${readingSpread(sd.endOffset, 'length', job)} and ${about(sd.endAngle)}. Allowed: ${fine(allowed, job)} and ${exactAngle(direction)}.`,
		`Farthest corner off its place: bend ${shape.bend}, by ${fine(shape.off, job)}. Allowed: ${fine(allowed, job)}.`,
		...(invited === null ? [] : [invited]),
	];
}

/** The bends that were made outside of the drawing's own band. */
function outsideOf(job: SessionView['job'], bends: SessionView['bends']): number[] {
	return bends.flatMap(({ design, made }, i) =>
		made !== null && isInBand(job.tolerance, design, made.angle) ? [] : [i + 1],
	);
}

/** What a bend was aimed at when it was made; one that is still to come, what it is to be now. */
export function aimedAt({ bends, asBuilt }: Pick<SessionView, 'bends' | 'asBuilt'>, bend: number): number {
	const { made, target } = at(bends, bend - 1);
	return made === null ? at(asBuilt.bends, bend - 1).angle : target;
}

/** A rotation as it was made, told as the drawing tells it: 270.8° beside 270° drawn, not -89.2°. */
export function rotationMade(made: number, drawn: number): string {
	return angle(made + 360 * Math.round((drawn - made) / 360));
}

type BendMade = Pick<SessionView['bends'][number], 'target' | 'made' | 'pulls'>;

/** How a bend came out: `0.3° short, inside`. */
export function bendVerdict({ target, made, pulls }: BendMade, job: SessionView['job']): string {
	if (made === null) return pulls.some((pull) => !pull.void) ? 'pulled, not taken' : 'not made';
	const off = made.angle - target;
	const size = Math.abs(off) < 0.05 ? 'as aimed' : shortOrOver(off);
	return `${size}, ${isInBand(job.tolerance, target, made.angle) ? 'inside' : 'outside'}`;
}

/** What was not made, what nobody measured, and what is left to do or to look at. */
export function openWords(state: State, { bends, checks, status, job }: SessionView): string[] {
	const open = bends.flatMap(({ made, pulls }, i) => {
		const measured = pulls.flatMap((pull) => (pull.void ? [] : pull.measured)).at(-1);
		if (made === null) return [notTakenWords(i + 1, pulls, measured)];
		return measured !== undefined
			? []
			: [`Bend ${i + 1} was not measured with the angle finder: its angle is known by the dial.`];
	});
	const left =
		status === 'done'
			? [
					...cutsOf(state)
						.filter(({ off }) => isCut(off, job))
						.map((cut) => cutOffWords(cut, job)),
					...finishList(state).map((fact) => finishWords(fact, job)),
				]
			: checks.flatMap(({ name, reading }) => (reading === null ? [`Check ${foreignName(name)} was not read.`] : []));
	return [...open, ...left];
}

/** A bend that was pulled and then left or given up is no straight tube: what is on it is said. */
function notTakenWords(bend: number, pulls: BendMade['pulls'], measured: number | undefined): string {
	const last = pulls.findLast((pull) => !pull.void);
	if (last === undefined) return `Bend ${bend} was not made.`;
	const read =
		measured === undefined ? `last held at ${dial(last.loaded)} and not measured` : `last measured ${dial(measured)}`;
	return `Bend ${bend} was pulled but not taken: ${read}.`;
}

/** Whether a check lies inside its tolerance. `trim`: how much of its reading is trim that was still on. */
export function checkVerdict(fits: boolean | null, trim: number, job: SessionView['job']): string {
	if (fits === null) return '-';
	const word = fits ? 'inside' : 'outside';
	const size = fine(Math.abs(trim), job);
	if (size === fine(0, job)) return word;
	return `${word}: trim still on made it ${size} ${trim > 0 ? 'more' : 'less'}`;
}

/** The straight after the last bend, which has no row of its own. */
export function lastStraightWords({ job, asBuilt }: SessionView, drawn: number): string {
	return `Last straight: ${fine(drawn, job)} drawn, ${fine(asBuilt.straights.at(-1)!, job)} made, trim not counted.`;
}

/** Where the log lies and how it is known again. */
export function logWords({ path, lines, sha256 }: { path: string; lines: number; sha256: string }): string[] {
	return [
		`${foreign(path)}, ${oneOrMore(lines, 'line')}.`,
		`SHA-256 of ${lines === 1 ? 'that line' : `those ${lines} lines`}: ${sha256}`,
		`To compare: head -n ${lines} FILE | sha256sum. A line that was changed since gives another sum.`,
	];
}
