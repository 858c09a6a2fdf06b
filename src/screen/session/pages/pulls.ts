import { meanOf } from '../../../maths/list.ts';
import type { DecideAsk, PullAsk } from '../../../session/protocol/asks.ts';
import { stages } from '../../../session/report/stages.ts';
import { angleBand } from '../../../tube/tolerance.ts';
import { angleGiveOrTake } from '../../../words/numbers.ts';
import { bandWords, RUNGS, wantedWords } from '../../../words/session/ask-pull.ts';
import { pullLadder, type Rung } from '../../drawing/pull-ladder.ts';
import { asciiOnly, line } from '../../text/line.ts';
import type { MadePull } from '../live-port.ts';
import type { SessionState } from '../session-state.ts';
import type { Room, Section } from './page.ts';

/** The pulls made, a rung each. Only the angle finder tells where one led: the dial after release is off by what it is off. */
function rungsOf(pulls: readonly MadePull[]): Rung[] {
	return pulls.flatMap((pull, at) => {
		const held = RUNGS.held(at + 1, pull.loaded);
		const back = pull.released === null ? held : RUNGS.back(held, pull.released);
		const [pulled = [], ...opened] = stages(pull);
		const first = pulled.length === 0 ? { words: back, angle: null } : rungOf(held, pulled);
		return [first, ...opened.filter((readings) => readings.length > 0).map((each) => rungOf(RUNGS.opened, each))];
	});
}

function rungOf(how: string, readings: readonly number[]): Rung {
	const made = meanOf(readings);
	return { words: RUNGS.made(how, made), angle: made };
}

/** How many pulls a small window keeps, up to so many rows: the last ones. */
const FEW: readonly (readonly [rows: number, pulls: number])[] = [
	[20, 1],
	[24, 2],
	[30, 4],
];

/** The pulls of the bend at work against what is wanted; with what the open pull is expected to lead to. */
export function ladder(state: SessionState, ask: PullAsk | DecideAsk, room: Room): Section[] {
	const wanted = wantedWords(ask);
	const aim = { target: ask.target, ...angleBand(state.job.tolerance, ask.target) };
	const made = rungsOf(state.pulls);
	const next: Rung[] = ask.ask === 'pull' ? [nextRung(ask)] : [];
	const [, most] = FEW.find(([rows]) => room.window <= rows) ?? [0, made.length];
	const few = most === 0 ? [] : made.slice(-most);
	const said = (text: string) => (room.ascii ? asciiOnly(text) : text);
	const rungs = [...few, ...next].map((rung) => ({ ...rung, words: said(rung.words) }));
	if (room.spoken) {
		return [{ rank: 0, lines: [bandWords(wanted, aim), ...rungs.map(({ words }) => words)].map((text) => line(text)) }];
	}
	const lines = pullLadder(said(wanted), rungs, aim, room.columns);
	return [{ rank: 0, lines: lines.length > 1 ? lines : [] }];
}

function nextRung({ pull, stop, expect }: PullAsk): Rung {
	return {
		words: RUNGS.next(pull, stop, angleGiveOrTake(expect)),
		angle: expect.angle,
		sd: expect.sd,
	};
}
