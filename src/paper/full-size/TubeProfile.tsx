import { roundedTo } from '../../maths/scalar.ts';
import { chalkPlanes } from '../../tube/chalk.ts';
import { cutLength, marks } from '../../tube/marks.ts';
import { type Profile as Plane, profiles } from '../../tube/profile.ts';
import { FULL_SIZE, partTitle, planeName, sheetWords } from '../../words/full-size.ts';
import type { PartProps } from '../job-on-paper.ts';
import { useTypeface } from '../Words.tsx';
import { FullSizeSheet, roomUnder } from './FullSizeSheet.tsx';
import { ProfileMap } from './ProfileMap.tsx';
import { profileDrawing } from './profile-drawing.ts';
import { laidOnSheets, MOST_SHEETS } from './sheets.ts';

/** Each plane of the tube at full size, with a map of its sheets and what to chalk instead. */
export function TubeProfile({ of, paper }: PartProps) {
	const { job, shape, foot } = of;
	const type = useTypeface();
	const mark = marks(job, shape, cutLength(job, shape));
	const chalk = chalkPlanes(shape);
	const planes = profiles(job, shape);
	return planes.flatMap((plane, i) => {
		const laid = laidOnSheets(
			profileDrawing(plane, job, mark),
			roomUnder(sheetLine('A1', 1000), paper, type),
			turnsOf(plane),
		);
		const title = `${partTitle('profile', job.name)}${planes.length === 1 ? '' : `, ${planeName(plane.plane, planes.length)}`}`;
		const isPrinted = laid.sheets.length <= MOST_SHEETS;
		return [
			<ProfileMap
				key={title}
				of={of}
				paper={paper}
				title={title}
				laid={laid}
				isPrinted={isPrinted}
				chalk={chalk[i]!}
				planes={planes.length}
			/>,
			...(isPrinted ? laid.sheets : []).map((sheet) => (
				<FullSizeSheet
					key={`${title} ${sheet.name}`}
					paper={paper}
					title={title}
					foot={foot}
					words={sheetLine(sheet.name, laid.sheets.length)}
					laid={laid}
					sheet={sheet}
				/>
			)),
		];
	});
}

const sheetLine = (name: string, of: number) => `${sheetWords(name, of)}. ${FULL_SIZE.joining}`;

/** Turns of a plane that are tried: each straight, and the line from end to end, upright and level. */
function turnsOf({ plane: { straights, flat } }: Plane): number[] {
	const ends = straights.map(({ start, end }) => [flat(start), flat(end)] as const);
	const all = [...ends, [ends[0]![0], ends.at(-1)![1]] as const];
	const found = all
		.filter(([from, to]) => Math.hypot(to[0] - from[0], to[1] - from[1]) > 1e-6)
		.map(([from, to]) => (-Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI);
	const distinct = [...new Set(found.map((turn) => roundedTo(turn, 3)))];
	return [0, 90, ...distinct.slice(0, MOST_TURNS).flatMap((turn) => [turn, turn + 90])];
}

const MOST_TURNS = 10;
