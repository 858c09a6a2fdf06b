import { Page, Text, View } from '@react-pdf/renderer';
import type { ReactNode } from 'react';
import { EDGE, HEAD, insideOf, MARGIN, type Paper } from './page-size.ts';
import { FAMILY } from './typeface.ts';
import { Words } from './Words.tsx';

export interface PaperPageProps {
	paper: Paper;
	/** At the top of every page: what it is, and of what. */
	title: string;
	/** At the foot: how it came about. */
	foot: string;
	children: ReactNode;
}

const NUMBER_WIDTH = 80;

/** Sheets of paper with a head, a foot and their number; what does not fit on one goes on on the next. */
export function PaperPage({ paper, title, foot, children }: PaperPageProps) {
	const { width } = insideOf(paper);
	return (
		<Page
			size={[paper.width, paper.height]}
			style={{ paddingVertical: EDGE + HEAD, paddingHorizontal: MARGIN, fontFamily: FAMILY }}
		>
			<View fixed style={{ position: 'absolute', top: EDGE, left: MARGIN, width }}>
				<Words text={title} width={width} size={7.5} brief />
			</View>
			{children}
			<View fixed style={{ position: 'absolute', bottom: EDGE, left: MARGIN, width, flexDirection: 'row' }}>
				<Words text={foot} width={width - NUMBER_WIDTH} size={7.5} brief />
				<Text
					style={{ width: NUMBER_WIDTH, fontFamily: FAMILY, fontSize: 7.5, textAlign: 'right' }}
					render={({ pageNumber, totalPages }) => `page ${pageNumber} of ${totalPages}`}
				/>
			</View>
		</Page>
	);
}
