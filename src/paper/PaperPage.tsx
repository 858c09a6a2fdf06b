import { Page, Text, View } from '@react-pdf/renderer';
import type { ReactNode } from 'react';
import { pageWords } from '../words/sheet.ts';
import { EDGE, HEAD, insideOf, MARGIN, type Paper } from './page-size.ts';
import { FAMILY } from './typeface.ts';
import { Words } from './Words.tsx';

export interface PaperPageProps {
	paper: Paper;
	/** At the top of every page: what it is, and of what. */
	title: string;
	/** At the foot: how it came about. */
	foot: string;
	/** Whether all of it is known to fit on one page, which is then laid out once less; and whether that is the only page there is. */
	fits?: boolean;
	only?: boolean;
	children: ReactNode;
}

const NUMBER_WIDTH = 80;
const PAGE = { paddingVertical: EDGE + HEAD, paddingHorizontal: MARGIN, fontFamily: FAMILY };

/** Sheets of paper with a head, a foot and their number; what does not fit on one goes on on the next. */
export function PaperPage({ paper, title, foot, fits = false, only = false, children }: PaperPageProps) {
	const { width } = insideOf(paper);
	// A page that goes on nowhere is as high as what stands on it, unless it is told.
	return (
		<Page size={[paper.width, paper.height]} wrap={!fits} style={{ ...PAGE, ...(fits && { minHeight: paper.height }) }}>
			<View fixed style={{ position: 'absolute', top: EDGE, left: MARGIN, width }}>
				<Words text={title} width={width} size={7.5} brief />
			</View>
			{children}
			<View fixed style={{ position: 'absolute', bottom: EDGE, left: MARGIN, width, flexDirection: 'row' }}>
				<Words text={foot} width={width - NUMBER_WIDTH} size={7.5} brief />
				{only ? (
					<Words text={pageWords(1, 1)} width={NUMBER_WIDTH} size={7.5} align="right" />
				) : (
					<Text
						style={{ width: NUMBER_WIDTH, fontFamily: FAMILY, fontSize: 7.5, textAlign: 'right' }}
						render={({ pageNumber, totalPages }) => pageWords(pageNumber, totalPages)}
					/>
				)}
			</View>
		</Page>
	);
}
