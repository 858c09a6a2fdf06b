import type { Sight } from '../practice/station.ts';
import type { Action } from '../session/protocol/action.ts';
import type { Ask } from '../session/protocol/asks.ts';
import type { Job } from '../tube/job.ts';
import { ADVISED } from './asked-next.ts';
import { checkValueWords } from './doubt.ts';
import { foreign, foreignName } from './foreign.ts';
import { listed } from './listed.ts';
import { angle, angleGiveOrTake, dial, notNothing, readingValue } from './numbers.ts';
import { READINGS } from './readings.ts';
import { reasonWords } from './reason.ts';

/** A sentence that tells a person what the simulated instruments show at this ask; null where there is nothing to see. */
export function sightInWords(ask: Ask, sight: Sight, job: Job): string | null {
	const reading = sight.reading ?? 0;
	switch (ask.ask) {
		case 'set': {
			const cut = sight.length === undefined ? '' : ` The piece is cut to ${notNothing(sight.length, job)}.`;
			return `Simulated: with the tube snug the dial shows ${dial(sight.pointer ?? 0)}.${cut}`;
		}
		case 'pull': {
			// A stroke that was made stays made when the answer before it is taken back and another stop follows.
			const asked = sight.stop === undefined || sight.stop === ask.stop;
			const stroke = asked ? 'stroke to the stop' : `stroke, made when the stop was ${dial(sight.stop ?? 0)}`;
			return `Simulated ${stroke}: held, the dial shows ${dial(sight.loaded ?? 0)}; after release ${dial(sight.released ?? 0)}.`;
		}
		case 'measure':
			return `Simulated: the angle finder shows ${dial(reading)}.`;
		case 'confirm':
			return `Simulated, read again: ${readingValue(reading, ask.of, ask.name, job)}.`;
		case 'check':
			return `Simulated: it measures ${readingValue(reading, 'check', ask.name, job)}.`;
		case 'decide':
			return sight.reading === undefined ? null : `Simulated: the angle finder shows ${dial(reading)}.`;
	}
}

/** Why a simulated operator gives a tube up. */
export const gaveUpWords = (bend: number): string => `bend ${bend} is past what can be worked back`;

/** What is asked, in a few words, and why where a reason goes with it. */
export function askInWords(ask: Ask, job: Job): { what: string; why: string } {
	switch (ask.ask) {
		case 'set':
			return { what: `set: mark at ${ask.mark.tape} ${job.units} from the start end, ${turn(ask)}`, why: '' };
		case 'pull':
			return { what: `pull: stop at ${dial(ask.stop)}${ease(ask.lead)}`, why: reasonWords(ask.reason, job) };
		case 'measure':
			return { what: `measure: expected ${angleGiveOrTake(ask.expect)}`, why: '' };
		case 'confirm':
			return {
				what: `read again: ${ask.name === undefined ? READINGS[ask.of] : foreignName(ask.name)} was given as ${readingValue(ask.reading, ask.of, ask.name, job)}`,
				why: reasonWords(ask.reason, job),
			};
		case 'check': {
			const { expect, design, name } = ask;
			const [expected, drawn] = [expect.value, design].map((each) => checkValueWords(each, ask.kind, job));
			return { what: `check ${foreignName(name)}: expected ${expected}, drawing ${drawn}`, why: '' };
		}
		case 'decide':
			return { what: `decide: the advice is to ${ADVISED[ask.advice]}`, why: reasonWords(ask.reason, job) };
	}
}

/** What the simulated operator answered. */
export function actionInWords(ask: Ask, action: Action, job: Job): string {
	switch (action.do) {
		case 'ready':
			return action.pointer === undefined ? 'ready' : `ready, the dial shows ${dial(action.pointer)}`;
		case 'loaded':
			return `held ${dial(action.loaded)}${action.released === undefined ? '' : `, after release ${dial(action.released)}`}`;
		case 'angles':
			return listed(action.angles.map(dial));
		case 'reading': {
			const of = ask.ask === 'confirm' ? ask.of : 'check';
			const name = ask.ask === 'confirm' || ask.ask === 'check' ? ask.name : undefined;
			return readingValue(action.reading, of, name, job);
		}
		case 'evidence':
			return `bend ${action.bend} measured again: ${dial(action.reading)}`;
		case 'scrap':
			return `scraps the tube: ${foreign(action.why)}`;
		case 'accept':
			return 'takes it';
		case 'pull':
			return 'pulls it again';
		case 'relieve':
			return 'opens it a little';
		default:
			return action.do;
	}
}

function turn({ seat, tubeTurn: { degrees, way } }: Extract<Ask, { ask: 'set' }>): string {
	if (seat > 1) return `set-up ${seat}, the tube as it lay`;
	return way === 'none' ? 'no turn' : `turn ${angle(degrees)} ${way === 'either' ? 'either way' : way}`;
}

function ease(lead: number | null): string {
	return lead === null ? '' : `, ease up from ${dial(lead)}`;
}
