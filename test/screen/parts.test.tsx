import { Box } from 'ink';
import { render } from 'ink-testing-library';
import { describe, expect, test } from 'vitest';
import { Row } from '../../src/screen/FrameView.tsx';
import { cut, type Line, span, spread, widthOf, wrap } from '../../src/screen/line.ts';
import { lookOf, styleOf } from '../../src/screen/look.ts';
import { bigNumbers } from '../../src/screen/parts/big-numbers.ts';
import { choiceLines } from '../../src/screen/parts/choice-list.ts';
import { digitRows, digitWidth } from '../../src/screen/parts/digits.ts';
import { keyLines } from '../../src/screen/parts/key-line.ts';
import { tubeDrawing } from '../../src/screen/parts/tube-drawing.ts';
import { resolveShape } from '../../src/tube/resolve.ts';
import { ARCH } from '../helpers/fake-ports.ts';

const LOOK = lookOf({ TERM: 'xterm', NO_COLOR: '1' }, false);

/** What Ink makes of the lines. */
function drawn(lines: readonly Line[]): string {
	const { lastFrame, unmount } = render(
		<Box flexDirection="column">
			{lines.map((line, at) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<Row key={at} line={line} look={LOOK} />
			))}
		</Box>,
	);
	const frame = lastFrame() ?? '';
	unmount();
	return frame;
}

describe('block digits', () => {
	test('every digit and sign, medium', () => {
		expect(digitRows('0123456789', 'medium').join('\n')).toBe(
			[
				'███  █  ███ ███ █ █ ███ ███ ███ ███ ███',
				'█ █ ██    █   █ █ █ █   █     █ █ █ █ █',
				'█ █  █  ███  ██ ███ ███ ███   █ ███ ███',
				'█ █  █  █     █   █   █ █ █  █  █ █   █',
				'███ ███ ███ ███   █ ███ ███  █  ███ ███',
			].join('\n'),
		);
		expect(digitRows('-3/8 .5', 'medium', '#').join('\n')).toBe(
			[
				'   ###   # ###     ###',
				'     #   # # #     #  ',
				'##  ##  #  ###     ###',
				'     # #   # #       #',
				'   ### #   ###   # ###',
			].join('\n'),
		);
	});

	test('no two digits look alike, and all rows are equally wide', () => {
		const all = [...'0123456789'].map((digit) => digitRows(digit, 'large').join('\n'));
		expect(new Set(all).size).toBe(10);
		for (const row of digitRows('39 5/8', 'large')) expect(row.length).toBe(digitWidth('39 5/8', 'large'));
	});

	test('what has no glyph is an error of the program', () => {
		expect(() => digitRows('12°', 'large')).toThrow('no block digit for "°"');
	});
});

describe('numbers side by side', () => {
	const numbers = [
		{ label: 'MARK', value: '39 5/8', below: 'start end' },
		{ label: 'TURN', value: '90', below: 'clockwise' },
		{ label: 'STOP', value: '51.5', below: 'held', chief: true },
	];

	test('shrink as the width does, the chief one last', () => {
		expect([100, 67, 60, 40, 20].map((width) => widthOf(bigNumbers(numbers, width, '█')[3]!))).toEqual([
			88, 62, 49, 37, 28,
		]);
	});

	test('medium, as drawn', () => {
		expect(drawn(bigNumbers(numbers, 60, '█'))).toBe(
			[
				'MARK                    TURN        STOP',
				'███ ███   ███   █ ███   ███ ███     ███  █    ███',
				'  █ █ █   █     █ █ █   █ █ █ █     █   ██    █',
				' ██ ███   ███  █  ███   ███ █ █     ███  █    ███',
				'  █   █     █ █   █ █     █ █ █       █  █      █',
				'███ ███   ███ █   ███   ███ ███     ███ ███ █ ███',
				'start end               clockwise   held',
			].join('\n'),
		);
	});
});

describe('a list of choices', () => {
	const choices = Array.from({ length: 9 }, (_, at) => ({
		label: `choice ${at + 1}`,
		step: at,
		group: at < 4 ? 'First' : 'Then',
	}));

	test('whole, where there is room', () => {
		expect(drawn(choiceLines(choices.slice(0, 5), null, 20))).toBe(
			[
				'First',
				'  1   choice 1',
				'  2   choice 2',
				'  3   choice 3',
				'  4   choice 4',
				'',
				'Then',
				'  5   choice 5',
			].join('\n'),
		);
	});

	test('keeps the one pointed at in sight and counts what is left out', () => {
		for (let selected = 0; selected < choices.length; selected++) {
			const lines = choiceLines(choices, selected, 6);
			expect(lines.length).toBe(6);
			expect(drawn(lines)).toContain(`choice ${selected + 1}`);
		}
		expect(drawn(choiceLines(choices, null, 6))).toContain('(8 more below; arrow keys)');
	});
});

describe('lines', () => {
	test('the keys take as many lines as they need, none of them cut', () => {
		const keys = [
			['+', 'ready'],
			['number Enter', 'give it'],
			['/', 'take back'],
			['*', 'more'],
		] as const;
		expect(drawn(keyLines(keys, 60))).toBe(' +  ready   number Enter  give it   /  take back   *  more');
		expect(drawn(keyLines(keys, 40))).toBe(' +  ready   number Enter  give it\n /  take back   *  more');
	});

	test('are wrapped between words, spread and cut to the width', () => {
		expect(wrap('Let the pressure off.', 10, 2)).toEqual(['Let the', '  pressure', '  off.']);
		expect(drawn([spread([span('left')], [span('right')], 12)])).toBe('left   right');
		expect(drawn([spread([span('much too long')], [span('right')], 12)])).toBe('much … right');
		expect(drawn([cut([span('abc'), span('def')], 5)])).toBe('abcd…');
	});
});

describe('the plan of the tube', () => {
	const shape = resolveShape(ARCH, 1);

	test('tells made, in hand and to come apart, in ASCII too', () => {
		expect(tubeDrawing(shape, 2, 60, 6, true).join('\n')).toMatchInlineSnapshot(`
			"                                 ... .. .. .....            
			                                .               .           
			        #                     ..                  .         
			        ###                 .                               
			          ###            2 .                                
			            ############XXX                                 "
		`);
	});

	test('shows all as made when the last bend is', () => {
		const drawing = tubeDrawing(shape, 5, 60, 6, true).join('');
		expect(drawing).toMatch(/^[ #]+$/);
	});

	test('fits any room', () => {
		for (const [columns, rows] of [
			[60, 4],
			[20, 9],
			[110, 10],
		] as const) {
			const drawing = tubeDrawing(shape, 1, columns, rows, false);
			expect(drawing.map((row) => row.length)).toEqual(Array(rows).fill(columns));
			expect(drawing.join('').trim()).not.toBe('');
		}
	});
});

describe('how things stand out', () => {
	test('colours only where they are wanted, weight always', () => {
		expect(styleOf('wrong', lookOf({ TERM: 'xterm' }, false))).toEqual({ bold: true, color: 'red' });
		expect(styleOf('wrong', lookOf({ TERM: 'xterm' }, true))).toEqual({ bold: true });
		expect(styleOf('wrong', lookOf({ TERM: 'dumb' }, false))).toEqual({});
	});
});
