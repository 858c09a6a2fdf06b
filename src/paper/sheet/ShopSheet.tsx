import { View } from '@react-pdf/renderer';
import { formatAngle } from '../../units/format.ts';
import { foreignName } from '../../words/foreign.ts';
import { tape } from '../../words/numbers.ts';
import { turnWords } from '../../words/turns.ts';
import type { PartProps } from '../job-on-paper.ts';
import { PaperPage } from '../PaperPage.tsx';
import { inside } from '../page-size.ts';
import { Words } from '../Words.tsx';

/** One page to bend by with a pen in hand. */
export function ShopSheet({ of, paper }: PartProps) {
	const { job, document } = of;
	const { width } = inside(paper);
	return (
		<PaperPage paper={paper} title={`${foreignName(job.name)}: shop sheet`} foot={of.foot}>
			<Words text={foreignName(job.name)} width={width} size={14} bold />
			<Words text={`Cut the tube to ${tape(document.cutLength, job)}.`} width={width} size={9} />
			{document.bends.map((bend) => (
				<View key={bend.bend} wrap={false} style={{ flexDirection: 'row' }}>
					<Words text={`${bend.bend}`} width={40} size={10} bold />
					<Words text={tape(bend.mark.fromStart, job)} width={100} size={10} />
					<Words text={turnWords(bend.tubeTurn)} width={180} size={10} />
					<Words text={formatAngle(bend.angle, 2)} width={80} size={10} />
				</View>
			))}
		</PaperPage>
	);
}
