/**
 * What the as-built estimate and the correction are worth: each line with what it should keep. Seeds are the bench's own: nothing was
 * tuned on them. `--quick` bends fewer tubes; a number is another seed.
 */
import { draws } from '../../src/practice/random.ts';
import {
	checkMiss,
	directionMiss,
	endMiss,
	type Honesty,
	honestAngles,
	honestEnd,
	quantile,
	share,
} from './fit-figures.ts';
import { sessionTube } from './fit-hat.ts';
import { anyTube, flatHat } from './fit-jobs.ts';
import { drawErrors, makeTube, type Noise, type Rule } from './fit-made.ts';
import { againstScipy, timings } from './fit-timing.ts';
import { median } from './rounds.ts';

const SEED = Number(process.argv.slice(2).find((word) => /^\d+$/.test(word)) ?? 61_700_000);
const quick = process.argv.includes('--quick');
const tubes = (many: number) => (quick ? Math.ceil(many / 10) : many);

const WIDTHS = [46, 12, 12, 12, 8, 14, 7];
function row(...cells: string[]): void {
	console.log(
		cells
			.map((cell, i) => (i === 0 ? cell.padEnd(WIDTHS[i]!) : cell.padStart(WIDTHS[i]!)))
			.join('  ')
			.trimEnd(),
	);
}
const verdict = (kept: boolean) => (kept ? 'kept' : 'MISSED');

/** The stated shop: finder .2, marks 1/64 in, rotations .4 degree, stretch up to .8 %, radius 1 % by the die and .5 % by the bend. */
const SHOP = { rotation: 0.4, mark: 1 / 64, finder: 0.2, die: 0.01, bendRadius: 0.005, stretch: 0.008, check: 1 / 128 };
const EXACT = { mark: 0, finder: 0, readBack: 0, die: 0, bendRadius: 0, stretch: 0, check: 0 };

function hats(): void {
	const all = Array.from({ length: tubes(400) }, (_, i) => sessionTube(flatHat(), SEED + i)).filter(
		(tube) => tube !== null,
	);
	const of = (miss: typeof checkMiss, which: 'truth' | 'kept') =>
		quantile(
			all.map((tube) => miss(tube[which], tube.state)),
			0.95,
		);
	const line = (name: string, miss: typeof checkMiss, limit: number, digits: number) => {
		const [kept, ours] = [of(miss, 'kept'), of(miss, 'truth')];
		row(
			`hat by whole sessions, 95 %: ${name}`,
			kept.toFixed(digits),
			ours.toFixed(digits),
			'',
			(ours / kept).toFixed(2),
			`<= ${limit}`,
			verdict(ours <= limit),
		);
	};
	line('both checks, in', checkMiss, 0.12, 3);
	line('direction, degrees', directionMiss, 0.9, 2);
	honest(
		'hat by whole sessions',
		all.map((tube) => honestAngles(tube.state, tube.bends)),
		null,
	);
}

function solid(name: string, bends: number, noise: Noise, limit: number, judged = true): void {
	const worse: number[] = [];
	const bands: { angles: Honesty[]; ends: Honesty[] } = { angles: [], ends: [] };
	const misses = Array.from({ length: tubes(300) }, (_, i) => {
		const draw = draws(SEED + 10_000 * bends + i);
		const job = anyTube(bends, draw);
		const errors = drawErrors(job, bends, noise, draw);
		const bent = (rule: Rule) => {
			const tube = makeTube(job, noise, errors, rule);
			if (rule === 'corrected') {
				worse.push(...tube.worse);
				bands.angles.push(honestAngles(tube.state, tube.bends));
				bands.ends.push(honestEnd(tube.state, tube.truth));
			}
			return endMiss(tube.truth, tube.state);
		};
		return [bent('kept'), bent('corrected'), bent('oracle')] as const;
	});
	const [kept, ours, oracle] = [0, 1, 2].map((k) => median(misses.map((m) => m[k]!))) as [number, number, number];
	row(
		`${bends} bends ${name}, median end miss, in`,
		kept.toFixed(3),
		ours.toFixed(3),
		noise.finder === 0 ? '' : oracle.toFixed(3),
		(ours / kept).toFixed(3),
		judged ? `<= ${limit}` : '',
		judged ? verdict(ours <= limit * kept) : '',
	);
	if (noise.finder === 0) return;
	const most = quantile(worse, 1);
	row(`  worst correction against none, in sd of the end`, '', most.toFixed(2), '', '', '<= 3', verdict(most <= 3));
	honest(`  ${bends} bends ${name}`, bands.angles, bands.ends);
}

function honest(name: string, angles: readonly Honesty[], ends: readonly Honesty[] | null): void {
	const within = (part: number) => part >= 87 && part <= 93;
	const [a, e] = [share(angles), ends && share(ends)];
	row(`${name}, % in the 90 % band: angles`, '', a.toFixed(1), '', '', '87 to 93', verdict(within(a)));
	if (e !== null) row(`${name}, % in the 90 % band: end`, '', e.toFixed(1), '', '', '87 to 93', verdict(within(e)));
}

function speed(): void {
	const { correction, unbounded, general, apart } = timings(SEED);
	row('one correction, 8 bends, median ms', '', correction.toFixed(3), '', '', '<= .3', verdict(correction <= 0.3));
	const ratio = general / unbounded;
	row(
		'the same unbounded, ms',
		general.toFixed(2),
		unbounded.toFixed(3),
		'',
		`${ratio.toFixed(0)} x`,
		'>= 20 x',
		verdict(ratio >= 20),
	);
	row('  difference of cost', '', apart.toExponential(1), '', '', '<= 1e-9', verdict(apart <= 1e-9));
	const { slack, active } = againstScipy();
	row('cost against scipy trf, bounds slack', '', slack.toExponential(1), '', '', '<= 1e-9', verdict(slack <= 1e-9));
	row('cost against scipy trf, bounds active', '', active.toExponential(1), '', '', '<= 1e-9', verdict(active <= 1e-9));
}

row('', 'as drawn', 'corrected', 'truth told', 'ratio', 'should be');
speed();
hats();
for (const bends of [4, 8]) {
	const known = bends === 4 ? 0.25 : 0.2;
	solid('(a) angles off 1.5, all known', bends, { ...SHOP, ...EXACT, angle: 1.5 }, known);
	solid('(a) rotations off 1.5 as well', bends, { ...SHOP, ...EXACT, angle: 1.5, rotation: 1.5 }, known, false);
	solid('(b) read back', bends, { ...SHOP, angle: 0.45, readBack: 0.1 }, 0.6);
	solid('(c) not read back', bends, { ...SHOP, angle: 0.45, readBack: null }, 0.9);
}
