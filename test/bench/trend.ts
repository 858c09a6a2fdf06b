/**
 * Whether the line at home that a bender has changed is so: how often it is said in shops where nothing has, and how soon where springback has
 * moved by a degree; beside it the chart of single sessions alone. The usual simulated world, springback room and history as in the program.
 * A first argument bends in so many shops, a second begins at another seed (tuning: 900,000 and up). Exit code 1 when a limit is passed.
 */
import type { KeptRow } from '../../src/journal/kept-row.ts';
import { newsOf } from '../../src/review/trend.ts';
import { chartOf, type Rule } from '../../src/review/trend-chart.ts';
import { type Change, sessionsOf } from './trend-shop.ts';

const SHOPS = Number(process.argv[2] ?? 150);
const SEED = Number(process.argv[3] ?? 20_611_000);
/** Sessions of a shop where nothing changes; and before a shift, and in how many it is to be found. */
const USUAL_SESSIONS = 100;
const BEFORE = 24;
const WITHIN = 6;
const LIMITS = { apart: 300, found: 0.8 };

/** What is shown of these sessions, the oldest first. */
const isNews = (rows: readonly KeptRow[]) => newsOf([...rows].reverse()).length > 0;

/** At which sessions after `from` the chart of single sessions marks one by these rules. */
function marked(rows: readonly KeptRow[], from: number, rules: readonly Rule[]): boolean[] {
	const chart = chartOf(rows.map(({ figures }) => figures!.springback!));
	return (chart?.points ?? []).slice(from).map((point) => point.rules.some((rule) => rules.includes(rule)));
}
const LIMIT_ALONE: readonly Rule[] = ['beyond-limit'];
const ALL_RULES: readonly Rule[] = ['beyond-limit', 'two-of-three', 'four-of-five', 'eight-in-a-row'];

/** How often something is called out where nothing has happened: after how many of the sessions the line stands, which one sees at the next start. */
function usual(): number {
	let [sessions, begun, stands, alone, all] = [0, 0, 0, 0, 0];
	for (let n = 0; n < SHOPS; n++) {
		const rows = sessionsOf(SEED + 10 * n, USUAL_SESSIONS);
		let before = false;
		for (let i = 1; i <= rows.length; i++) {
			const news = isNews(rows.slice(0, i));
			sessions++;
			stands += Number(news);
			begun += Number(news && !before);
			before = news;
		}
		alone += marked(rows, BEFORE, LIMIT_ALONE).filter(Boolean).length;
		all += marked(rows, BEFORE, ALL_RULES).filter(Boolean).length;
	}
	const charted = SHOPS * (USUAL_SESSIONS - BEFORE);
	const apart = sessions / stands;
	console.log(`${SHOPS} shops where nothing changes, seeds ${SEED} up: ${sessions} sessions`);
	console.log(
		`  the line stands at the end of one session in ${apart.toFixed(0)} (limit ${LIMITS.apart}), and begins at one in ${(sessions / begun).toFixed(0)}`,
	);
	console.log(
		`  chart alone: beyond its limits once in ${(charted / alone).toFixed(0)}, by all rules once in ${(charted / all).toFixed(0)}`,
	);
	return apart;
}

/** In what part of shifts the line is there within so many sessions. */
function shifted(name: string, change: Omit<Change, 'after'>, seed: number): number {
	let [found, alone, all, already] = [0, 0, 0, 0];
	for (let n = 0; n < SHOPS; n++) {
		const rows = sessionsOf(seed + 10 * n, BEFORE + WITHIN, { after: BEFORE, ...change });
		already += Number(isNews(rows.slice(0, BEFORE)));
		found += Number(rows.some((_, i) => i >= BEFORE && isNews(rows.slice(0, i + 1))));
		alone += Number(marked(rows, BEFORE, LIMIT_ALONE).some(Boolean));
		all += Number(marked(rows, BEFORE, ALL_RULES).some(Boolean));
	}
	const percent = (count: number) => `${((100 * count) / SHOPS).toFixed(0)} %`;
	console.log(`${name}, after ${BEFORE} sessions, seeds ${seed} up (${SHOPS} shops, ${already} with the line before):`);
	console.log(
		`  within ${WITHIN} tubes the line in ${percent(found)} (limit ${100 * LIMITS.found} %), chart alone in ${percent(alone)}, by all its rules in ${percent(all)}`,
	);
	return found / SHOPS;
}

/** A degree at 45 degrees, where the dial stands at about 50. */
const PART = 1 / 50;
const apart = usual();
const found = [
	shifted('1 degree more at every angle', { takeUp: 1, part: 0 }, SEED + 100_000),
	shifted('1 degree less at every angle', { takeUp: -1, part: 0 }, SEED + 200_000),
	shifted('1 degree more at 45, in proportion', { takeUp: 0, part: PART }, SEED + 300_000),
	shifted('1 degree less at 45, in proportion', { takeUp: 0, part: -PART }, SEED + 400_000),
];
process.exitCode = apart >= LIMITS.apart && found.every((part) => part >= LIMITS.found) ? 0 : 1;
