import { table } from '../terminal/table.ts';
import type { ChalkPlane } from '../tube/chalk.ts';
import type { Job } from '../tube/job.ts';
import { CHALK_COLUMNS, chalkHeading, chalkPointWords, chalkWords, planeWords } from '../words/chalk.ts';
import type { BendRadius } from '../words/dies.ts';
import { tapeValue } from '../words/lengths.ts';
import { pageLines } from './page-lines.ts';

/** What to chalk on the bench, a table for each plane. `said`: sentences on what it rests on. */
export function chalkText(
	job: Job,
	{ planes, bends }: { planes: readonly ChalkPlane[]; bends: readonly BendRadius[] },
	said: readonly string[],
): string {
	return [
		...pageLines(chalkHeading(job)),
		...said.flatMap((sentence) => pageLines(sentence)),
		...pageLines(chalkWords(bends, job)),
		...planes.flatMap((plane) => ['', ...pageLines(planeWords(plane, planes.length, job)), ...planeRows(plane, job)]),
	].join('\n');
}

function planeRows({ points }: ChalkPlane, job: Job): string[] {
	const rows = points.map((point) => [
		chalkPointWords(point),
		...[point.along, point.off, point.fromA, point.fromB].map((length) => tapeValue(length, job)),
	]);
	return table([CHALK_COLUMNS, ...rows], [0]);
}
