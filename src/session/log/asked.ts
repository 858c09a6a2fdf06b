import type { TubeTurn } from '../../tube/turns.ts';
import type { SetAsk } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';

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

/**
 * What the operator was asked for, as its record has it: that is what he saw, whatever a later version would ask. Null where the record
 * answers something else, or has no such ask.
 */
export type Asked = AskedSet | AskedPull;

export function askedIn(ask: unknown): Asked | null {
	if (!isObject(ask) || typeof ask.bend !== 'number') return null;
	const { bend, seat, mark, rotation, tubeTurn, stop, expect, reason, why } = ask;
	if (ask.ask === 'set') {
		const isWhole = typeof seat === 'number' && typeof rotation === 'number' && isMark(mark) && isTurn(tubeTurn);
		return isWhole ? { ask: 'set', bend, seat, mark, rotation, turn: tubeTurn } : null;
	}
	if (ask.ask !== 'pull' || typeof stop !== 'number') return null;
	// Logs of earlier versions have the sentence itself.
	const logged: Reason[] = typeof why === 'string' ? [{ code: 'as-logged', text: why }] : [];
	const expected = isObject(expect) && typeof expect.angle === 'number' ? expect.angle : null;
	return { ask: 'pull', bend, stop, expected, reason: Array.isArray(reason) ? (reason as Reason[]) : logged };
}

function isObject(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null;
}

function isMark(value: unknown): value is SetAsk['mark'] {
	return isObject(value) && typeof value.fromStart === 'number' && typeof value.tape === 'string';
}

function isTurn(value: unknown): value is TubeTurn {
	return isObject(value) && typeof value.degrees === 'number' && typeof value.way === 'string';
}
