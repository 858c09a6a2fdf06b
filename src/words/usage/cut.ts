import { formatLength } from '../../units/format.ts';
import type { Units } from '../../units/units.ts';
import { tubeWords } from '../tube-size.ts';

type Tube = Parameters<typeof tubeWords>[0];

/** What `pullbook cut` is told wrong. */
export const CUT_USAGE = {
	twoForms: 'pullbook cut: --json and --csv are two forms of one list. Give one of them.',
	pdf: (form: string): string => `pullbook cut: --out writes a PDF, --${form} prints. Give one of them.`,
	noJobs: (folder: string): string => `The folder "${folder}" holds no job file. Name a job: pullbook cut JOB.json`,
	sticks: (given: string, count: string, most: number): string =>
		`--stock: "${given}" is ${count} sticks. Write 1 to ${most}, for example --stock 240x3.`,
	/** A length that no stick or saw has; all lengths in `units`. */
	length: (option: string, given: string, length: number, { least, most }: LengthBounds, units: Units): string =>
		`--${option}: "${given}" comes to ${formatLength(length, units)}. Write ${formatLength(least, units)} to ${formatLength(most, units)}.`,
	noStock: (tube: Tube): string =>
		`Say how long the sticks of ${tubeWords(tube)} are: --stock 240, or --stock 240x3 where there are three.`,
	severalTubes: (tubes: readonly Tube[]): string =>
		`These jobs are of ${tubes.length} tubes: ${tubes.map(tubeWords).join(', ')}. Counted sticks are of one: run pullbook cut for each tube, or leave out how many there are.`,
} as const;

interface LengthBounds {
	least: number;
	most: number;
}
