import { isObject } from '../../tube/as-json.ts';
import type { TubeTurn } from '../../tube/turns.ts';
import type { SetAsk } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';
import { isPullReason } from './form/facts.ts';
import { type Is, isList, isNumber, isOf, isOneOf, isOrdinal, isText, orAbsent, orNull } from './form/is.ts';

/** What a set-up was asked for. */
export interface AskedSet {
	ask: 'set';
	bend: number;
	seat: number;
	mark: SetAsk['mark'];
	rotation: number;
	turn: TubeTurn;
}

/** What a pull was asked for. */
export interface AskedPull {
	ask: 'pull';
	bend: number;
	stop: number;
	/** The angle that the stop was expected to leave; null in a log that does not have it. */
	expected: number | null;
	reason: readonly Reason[];
}

/** What the operator was asked for, as its record has it: that is what he saw, whatever a later version would ask. */
export type Asked = AskedSet | AskedPull;

interface LoggedSet extends Omit<AskedSet, 'ask' | 'turn'> {
	tubeTurn: TubeTurn;
}

const isLoggedSet: Is<LoggedSet> = isOf<LoggedSet>({
	bend: isOrdinal,
	seat: isOrdinal,
	mark: isOf<SetAsk['mark']>({
		fromStart: isNumber,
		fromFarEnd: isNumber,
		fromLastBend: orNull(isNumber),
		tape: isText,
		moved: isNumber,
	}),
	rotation: isNumber,
	tubeTurn: isOf<TubeTurn>({
		degrees: isNumber,
		way: isOneOf('clockwise', 'counterclockwise', 'either', 'none'),
	}),
});

/** Logs of earlier versions have a sentence in place of the reason, and the first of them no expectation. */
interface LoggedPull extends Pick<AskedPull, 'bend' | 'stop'> {
	expect?: { angle: number };
	reason?: Reason[];
	why?: string;
}

const isLoggedPull: Is<LoggedPull> = isOf<LoggedPull>({
	bend: isOrdinal,
	stop: isNumber,
	expect: orAbsent(isOf({ angle: isNumber })),
	reason: orAbsent(isList(isPullReason)),
	why: orAbsent(isText),
});

/** Null where the record answers something else; undefined where what it answers has not the form of it. */
export function askedIn(ask: unknown): Asked | null | undefined {
	if (!isObject(ask)) return null;
	if (ask.ask === 'set') return isLoggedSet(ask) ? asSet(ask) : undefined;
	if (ask.ask === 'pull') return isLoggedPull(ask) ? asPull(ask) : undefined;
	return null;
}

function asSet({ bend, seat, mark, rotation, tubeTurn }: LoggedSet): AskedSet {
	return { ask: 'set', bend, seat, mark, rotation, turn: tubeTurn };
}

function asPull({ bend, stop, expect, reason, why }: LoggedPull): AskedPull {
	const logged: Reason[] = why === undefined ? [] : [{ code: 'as-logged', text: why }];
	return { ask: 'pull', bend, stop, expected: expect?.angle ?? null, reason: reason ?? logged };
}
