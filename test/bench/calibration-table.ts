/** What was counted as tables in Markdown, a row for each job, world and tube. */
import { BINS, type Share, type Tally } from './calibration-tally.ts';

export interface Row {
	job: string;
	world: string;
	/** Which tube of its machine. */
	tube: string;
	tally: Tally;
}

const KINDS = [
	'pull',
	'measured',
	'made',
	'made, at the end',
	'checks',
	'far end, by axes',
	'far end, place',
	'far end, direction',
] as const;

export function markdown(rows: readonly Row[]): string {
	const tables = [
		table(
			'Misses in units of the stated deviation (root mean square), and % within the 90 % band',
			KINDS,
			rows,
			(tally) =>
				KINDS.map((kind) => {
					const spread = tally.spread(kind);
					return spread ? `${spread.z.toFixed(2)}, ${(100 * spread.inside).toFixed(0)}` : '';
				}),
		),
		binned('Chance to pass the tolerance: % stated, came to be (pulls)', 'risk', rows),
		binned('Chance to fit: % stated, came to be (tubes)', 'chance', rows),
		table(
			'What was said of the tube, and what it is',
			['said to fit: does', 'said not to: does', 'does: said to', 'place told, is', 'direction told, is'],
			rows,
			(tally) => [
				percent(tally.share('fits, of those said to')),
				percent(tally.share('fits, of those said not to')),
				percent(tally.share('said to fit, of those that do')),
				pair(tally.medians('place')),
				pair(tally.medians('direction')),
			],
		),
		table('The work', ['tubes', 'pulls a bend', 'most', 'over %', 'scrapped (good)', 'broken'], rows, (tally) => [
			`${tally.tubes}`,
			(tally.pulls / tally.bends).toFixed(2),
			`${tally.most}`,
			percent(tally.share('over')),
			`${tally.scrapped.of} (${tally.scrapped.yes})`,
			[...tally.broken].map(([why, many]) => `${many}: ${why}`).join('; '),
		]),
	];
	return tables.join('\n\n');
}

function binned(title: string, kind: keyof typeof BINS, rows: readonly Row[]): string {
	const heads = BINS[kind].map((high, i) => `${100 * (BINS[kind][i - 1] ?? 0)} to ${100 * high}`);
	return table(title, heads, rows, (tally) =>
		tally.bins(kind).map(({ stated, yes, of }) => {
			const part = (sum: number) => ((100 * sum) / of).toFixed(kind === 'risk' ? 2 : 0);
			return of === 0 ? '' : `${part(stated)}, ${part(yes)} (${of})`;
		}),
	);
}

function table(
	title: string,
	heads: readonly string[],
	rows: readonly Row[],
	cells: (tally: Tally) => readonly string[],
): string {
	const line = (list: readonly string[]) => `| ${list.join(' | ')} |`;
	const all = ['job', 'world', 'tube', ...heads];
	return [
		`${title}:`,
		'',
		line(all),
		line(all.map(() => '---')),
		...rows.map(({ job, world, tube, tally }) => line([job, world, tube, ...cells(tally)])),
	].join('\n');
}

function percent({ yes, of }: Share): string {
	return of === 0 ? '' : `${((100 * yes) / of).toFixed(1)} of ${of}`;
}

function pair(medians: { told: number; truly: number } | null): string {
	return medians ? `${medians.told.toFixed(3)}, ${medians.truly.toFixed(3)}` : '';
}
