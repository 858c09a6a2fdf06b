import { FULL_SIZE, sheetWords } from '../../words/full-size.ts';
import { useTypeface } from '../Words.tsx';
import type { Drawing } from './drawing.ts';
import { FullSizeSheet, type FullSizeSheetProps, roomUnder } from './FullSizeSheet.tsx';
import { laidOnSheets } from './sheets.ts';

/** A drawing at full size, upright, over as many sheets as it takes. Where that is more than one, the words say how to join them. */
export function FullSizeSheets({
	drawing,
	...page
}: { drawing: Drawing } & Pick<FullSizeSheetProps, 'paper' | 'title' | 'foot' | 'words'>) {
	const type = useTypeface();
	const { words, paper } = page;
	const whole = laidOnSheets(drawing, roomUnder(words, paper, type));
	if (whole.sheets.length === 1) return <FullSizeSheet {...page} laid={whole} sheet={whole.sheets[0]!} />;
	const longer = (name: string, of: number) => `${sheetWords(name, of)}. ${FULL_SIZE.joining} ${words}`;
	// Laid out anew, since more words leave less room.
	const laid = laidOnSheets(drawing, roomUnder(longer('A1', whole.sheets.length), paper, type));
	return laid.sheets.map((sheet) => (
		<FullSizeSheet
			key={sheet.name}
			{...page}
			words={longer(sheet.name, laid.sheets.length)}
			laid={laid}
			sheet={sheet}
		/>
	));
}
