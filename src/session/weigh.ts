import { made } from '../springback/filter.ts';
import { type Advised, advise } from './advice.ts';
import { at } from './as-built.ts';
import { isShort, target } from './bend-check.ts';
import type { Event } from './events.ts';
import type { Outcome, Rescue, ToMeasure, Tweak } from './protocol.ts';
import { isHopeless, rescueOf, residualsInWords, stockInWords } from './rescue.ts';
import { secondLook } from './second-look.ts';
import { show } from './show.ts';
import type { State } from './state.ts';
import { bendAt } from './state.ts';
import { ifAccepted, ifOpened, isTakenUp, tweaks } from './what-if.ts';

export interface Weighed extends Advised {
	of?: number;
	how?: 'pull' | 'relieve';
	/** With advice `measure`: what to read again. */
	again?: ToMeasure;
	accepted: Outcome;
	tweaks: Tweak[];
	rescue?: Rescue;
}

/** A tweak is advised where it is more likely than not to bring everything within its tolerance. */
const LIKELY = 0.5;

/** A state never changes, and one decision is asked for more than once. */
const KNOWN = new WeakMap<State, Weighed>();

/** The advice on the bend at work, weighed against what the whole tube becomes by it. */
export function weighed(state: State): Weighed {
	const found = KNOWN.get(state) ?? weigh(state);
	KNOWN.set(state, found);
	return found;
}

function weigh(state: State): Weighed {
	const alone = advise(state);
	const accepted = ifAccepted(state);
	const found = accepted.within ? [] : tweaks(state, accepted);
	const rescue = rescueOf(state, accepted, found, alone.advice === 'scrap');
	const known = { accepted, tweaks: found, ...(rescue === null ? {} : { rescue }) };
	if (isTakenUp(state)) return { ...takenUp(state, alone, accepted), ...known };
	if (alone.advice === 'pull') return { ...alone, ...known };
	if (alone.open !== undefined && ifOpened(state, alone.open).within) return { ...alone, ...known };
	const saving = alone.advice === 'accept' ? savingTweak(state, found) : null;
	if (saving !== null) return { ...goBack(state, alone, accepted, saving), ...known };
	const advised = rescue === null ? alone : leastBad(state, alone, rescue, found);
	return { ...(advised.advice === 'scrap' ? notOnOneReading(state, advised, alone) : advised), ...known };
}

/** Where what the tube would be given up for rests on one reading, that is read again first. */
function notOnOneReading(state: State, advised: Advised, alone: Advised): Advised & Pick<Weighed, 'again'> {
	const again = secondLook(state, alone.advice === 'scrap' ? 'bend' : 'tube');
	if (again === null) return advised;
	const why = `Measure bend ${again.bend} again: a tube is not given up on one reading. ${advised.why}`;
	return { ...advised, advice: 'measure', again, why };
}

/** A bend outside its tolerance is taken as it is where the tube still fits with it. */
function takenUp(state: State, { open: _, ...alone }: Advised, accepted: Outcome): Advised {
	const { angle } = made(state.filter);
	const off = angle - target(state);
	const is = `The bend is ${show(angle, 2)} degrees, ${show(Math.abs(off), 2)} ${off < 0 ? 'short of' : 'over'} the target`;
	const need = isShort(state) ? 'another pull is not needed' : 'it need not be opened';
	const by = state.bend === state.bends.length ? 'as it is' : 'corrected for it, the bends left bring';
	return {
		...alone,
		advice: 'accept',
		why: `${is}, but ${need}: ${by} ${residualsInWords(state, accepted)}. Accept it.`,
	};
}

/** The first tweak in the list that pulls a bend which came out short, and likely makes the tube fit; offered once a bend. */
function savingTweak(state: State, found: readonly Tweak[]): Tweak | null {
	const { over } = state.start.job.tolerance;
	const saves = ({ bend, do: how, by, within, chance }: Tweak) => {
		const { made: was, target } = bendAt(state, bend);
		// A bend that was taken short since the rest took it up is short still.
		const wanted = Math.max(target, at(state.design.shape.bends, bend - 1).angle);
		const short = was !== null && was.angle < wanted && was.angle + by <= wanted + over;
		return how === 'pull' && short && within && chance >= LIKELY && !offered(state, bend);
	};
	return found.find(saves) ?? null;
}

/** Whether this bend was gone back to already, or another accepted against the advice to do so. */
function offered({ entries }: State, bend: number): boolean {
	const was = (event: Event) =>
		(event.type === 'bend-reopened' && event.bend === bend) ||
		(event.type === 'bend-accepted' && event.declined === bend);
	return entries.some((entry) => !entry.void && entry.events.some(was));
}

type GoBack = Advised & Required<Pick<Weighed, 'of' | 'how'>>;

function goBack(state: State, alone: Advised, accepted: Outcome, { bend, by, chance }: Tweak): GoBack {
	const why =
		`This bend is good, but as the tube is now what is left cannot make it fit: ${residualsInWords(state, accepted)}. ` +
		`${show(by, 2)} degrees more in bend ${bend} would, with ${Math.round(100 * chance)} % probability.`;
	return { ...alone, advice: 'reopen', of: bend, how: 'pull', why };
}

/** Says what cannot be met; gives the piece up where even the best is another tube. */
function leastBad(state: State, alone: Advised, { best, stock }: Rescue, found: readonly Tweak[]): Advised {
	const reach = best.within ? 'The ends and checks could still be met' : 'The best this piece can become';
	const nearest = `${reach}, ${wayTo(best, found)}: ${residualsInWords(state, best)}.`;
	const { units } = state.start.job;
	if (alone.advice === 'scrap') return { ...alone, why: `${alone.why} ${nearest} ${stockInWords(stock, units)}` };
	// A bend that only this machine cannot pull further is no reason to give the tube up.
	if (alone.limit || !isHopeless(best, state.piece)) return { ...alone, why: `${alone.why} ${nearest}` };
	const { open: _, ...plain } = alone;
	return {
		...plain,
		advice: 'scrap',
		why: `${nearest} That is not the tube of the drawing: give it up. ${stockInWords(stock, units)}`,
	};
}

/** What has to be done for the least bad: it need not be what is advised for the bend at work. */
function wayTo({ do: how, bend, left }: Rescue['best'], found: readonly Tweak[]): string {
	if (how === 'accept') return 'this bend taken as it is';
	if (how === 'relieve') return 'this bend opened to its target';
	const tweak = found.find((each) => each.bend === bend && each.left === left);
	if (!tweak) return `bend ${bend} gone back to`;
	return `bend ${bend} gone back to and ${tweak.do === 'pull' ? 'pulled' : 'opened'} by ${show(tweak.by, 2)} degrees`;
}

/**
 * What a made bend that is gone back to is wanted to become: what makes the tube fit, where that is known, else what it was last wanted
 * to be. A bend taken short is pulled again to what it was short of.
 */
export function wantedAgain(state: State, bend: number, how: 'pull' | 'relieve'): number {
	const { target, shortOf } = bendAt(state, bend);
	const before = how === 'pull' && shortOf !== null ? shortOf : target;
	if (state.phase.at !== 'decide') return before;
	const tweak = weighed(state).tweaks.find((each) => each.bend === bend && each.do === how);
	return tweak?.within ? tweak.expect.angle : before;
}
