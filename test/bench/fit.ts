import { draws } from '../../src/practice/random.ts';
import { angleBetween } from '../../src/tube/angles.ts';
import { checkValue } from '../../src/tube/checks.ts';
import { shapeEnd } from '../../src/tube/frames.ts';
import { distance } from '../../src/tube/vector.ts';
import { anyTube, flatHat } from './fit-jobs.ts';
import { drawErrors, type MadeTube, makeTube, type Noise } from './fit-made.ts';
import { median } from './rounds.ts';

const SEED = Number(process.argv[2] ?? 1000);
const shop = { rotation: 0.4, mark: 1 / 64, finder: 0.2, die: 0.01, bendRadius: 0.005, stretch: 0.008, check: 1 / 128 };
const endError = ({ truth, state }: MadeTube) => distance(shapeEnd(truth).end, state.design.goal.end);
const dirError = ({ truth, state }: MadeTube) => angleBetween(shapeEnd(truth).direction, state.design.goal.direction);
const quantile = (v: number[], q: number) => [...v].sort((a, b) => a - b)[Math.floor(q * (v.length - 1))]!;

function hat(n: number) {
	const job = flatHat();
	const noise: Noise = { ...shop, angle: 0.45, readBack: null };
	const rows = Array.from({ length: n }, (_, i) => {
		const errors = drawErrors(job, 3, noise, draws(SEED + i));
		return (['kept', 'corrected', 'oracle'] as const).map((rule) => {
			const tube = makeTube(job, noise, errors, rule);
			const misses = tube.state.design.checks.map((d) =>
				Math.abs(checkValue(d.check, tube.truth, job.tube) - d.design),
			);
			return { drop: Math.max(...misses), dir: dirError(tube) };
		});
	});
	for (const [k, rule] of ['kept', 'corrected', 'oracle'].entries()) {
		console.log(
			'hat',
			rule,
			quantile(
				rows.map((r) => r[k]!.drop),
				0.95,
			).toFixed(3),
			quantile(
				rows.map((r) => r[k]!.dir),
				0.95,
			).toFixed(2),
		);
	}
}

function solid(name: string, bends: number, n: number, noise: Noise) {
	const rows = Array.from({ length: n }, (_, i) => {
		const draw = draws(SEED + 7919 * bends + i);
		const job = anyTube(bends, draw);
		const errors = drawErrors(job, bends, noise, draw);
		return (['kept', 'corrected', 'oracle'] as const).map((rule) => endError(makeTube(job, noise, errors, rule)));
	});
	const [kept, ours, oracle] = [0, 1, 2].map((k) => median(rows.map((r) => r[k]!)));
	console.log(
		name,
		bends,
		kept!.toFixed(3),
		ours!.toFixed(3),
		oracle!.toFixed(3),
		'ratio',
		(ours! / kept!).toFixed(3),
		(oracle! / kept!).toFixed(3),
	);
}

hat(500);
const none = { mark: 0, die: 0, bendRadius: 0, stretch: 0, check: 0 };
for (const bends of [4, 8]) {
	solid('(a)', bends, 150, { ...shop, ...none, angle: 1.5, rotation: 1.5, finder: 0, readBack: 0 });
	solid('(a+)', bends, 150, { ...shop, angle: 1.5, rotation: 1.5, finder: 0, readBack: 0 });
	solid('(b)', bends, 150, { ...shop, angle: 0.45, readBack: 0.1 });
	solid('(c)', bends, 150, { ...shop, angle: 0.45, readBack: null });
}
