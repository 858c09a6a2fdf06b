import { Line, Path, Svg, Text, View } from '@react-pdf/renderer';
import { FULL_SIZE } from '../../words/full-size.ts';
import { POINTS } from '../page-size.ts';
import { FAMILY } from '../typeface.ts';
import { Words } from '../Words.tsx';

/** What it takes at the foot of a sheet, points. */
export const RULER_HEIGHT = 40;

const [LEFT, MIDDLE] = [2, 22];
const RULER_WIDTH = 300;
const LONG = 8;

/** Ticks of one side: how far apart in points, how many, and which of them is long. */
const SIDES = [
	{ up: -1, step: 5 * POINTS.mm, count: 20, long: 2, unit: 'mm', says: 10 },
	{ up: 1, step: POINTS.in / 4, count: 16, long: 4, unit: 'in', says: 1 },
] as const;

/** A ruler of 100 mm and 4 in, and what to do with it. */
export function Ruler() {
	return (
		<View style={{ flexDirection: 'row', height: RULER_HEIGHT, alignItems: 'center' }}>
			<Svg width={RULER_WIDTH} height={RULER_HEIGHT}>
				<Line x1={LEFT} x2={LEFT + 4 * POINTS.in} y1={MIDDLE} y2={MIDDLE} stroke="black" strokeWidth={0.4} />
				{SIDES.map(({ up, step, count, long, unit, says }) => {
					const ticks = Array.from({ length: count + 1 }, (_, i) => {
						const height = up * (i % long === 0 ? LONG : LONG / 2);
						return `M ${LEFT + i * step} ${MIDDLE} L ${LEFT + i * step} ${MIDDLE + height}`;
					});
					const figures = Array.from({ length: count / long + 1 }, (_, i) => i).filter((i) => i > 0);
					return [
						<Path key={unit} d={ticks.join(' ')} stroke="black" strokeWidth={0.5} fill="none" />,
						...figures.map((i) => (
							<Text
								key={`${unit} ${i}`}
								x={LEFT + i * long * step}
								y={MIDDLE + up * LONG + (up < 0 ? -1.5 : 6.5)}
								textAnchor="middle"
								style={{ fontFamily: FAMILY, fontSize: 6 }}
							>
								{i * long === count ? `${i * says} ${unit}` : i * says}
							</Text>
						)),
					];
				})}
			</Svg>
			<Words text={FULL_SIZE.ruler} width={220} size={7} />
		</View>
	);
}
