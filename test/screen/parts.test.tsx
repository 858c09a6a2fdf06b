import { Box } from 'ink';
import { render } from 'ink-testing-library';
import { describe, expect, test } from 'vitest';
import { arrowRows } from '../../src/screen/drawing/turn-arrow.ts';
import { FrameRow } from '../../src/screen/shell/FrameView.tsx';
import { lookOf, styleOf } from '../../src/screen/shell/look.ts';
import { choiceLines } from '../../src/screen/text/choice-list.ts';
import { digitRows, digitSize } from '../../src/screen/text/digits.ts';
import { keyLines } from '../../src/screen/text/key-line.ts';
import { asciiOnly, cutLine, type Line, span, spreadOut } from '../../src/screen/text/line.ts';
import { wrap } from '../../src/terminal/wrap.ts';

const LOOK = lookOf({ TERM: 'xterm', NO_COLOR: '1' }, false);

/** What Ink makes of the lines. */
function drawn(lines: readonly Line[]): string {
	const { lastFrame, unmount } = render(
		<Box flexDirection="column">
			{lines.map((line, at) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<FrameRow key={at} line={line} look={LOOK} />
			))}
		</Box>,
	);
	const frame = lastFrame() ?? '';
	unmount();
	return frame;
}

const SMALL = { across: 1, down: 1 };
const SQUARE = { across: 2, down: 1 };

describe('block digits', () => {
	test('every digit and sign, a cell each', () => {
		expect(digitRows('0123456789', SMALL).join('\n')).toBe(
			[
				'███  █  ███ ███ █ █ ███ ███ ███ ███ ███',
				'█ █ ██    █   █ █ █ █   █     █ █ █ █ █',
				'█ █  █  ███  ██ ███ ███ ███   █ ███ ███',
				'█ █  █  █     █   █   █ █ █  █  █ █   █',
				'███ ███ ███ ███   █ ███ ███  █  ███ ███',
			].join('\n'),
		);
		expect(digitRows('-3/8 .5', SMALL, '#').join('\n')).toBe(
			[
				'   ###   # ###     ###',
				'     #   # # #     #  ',
				'##  ##  #  ###     ###',
				'     # #   # #       #',
				'   ### #   ###   # ###',
			].join('\n'),
		);
	});

	test('twice as high and wide', () => {
		expect(digitRows('1', { across: 2, down: 2 }, '#').join('\n')).toBe(
			['  ##  ', '  ##  ', '####  ', '####  ', '  ##  ', '  ##  ', '  ##  ', '  ##  ', '######', '######'].join('\n'),
		);
	});

	test('no two digits look alike, and all rows are as wide as they are said to be', () => {
		const all = [...'0123456789'].map((digit) => digitRows(digit, SQUARE).join('\n'));
		expect(new Set(all).size).toBe(10);
		for (const scale of [SMALL, SQUARE, { across: 4, down: 2 }]) {
			const { width, height } = digitSize('39 5/8', scale);
			const rows = digitRows('39 5/8', scale);
			expect(rows.map((row) => row.length)).toEqual(Array(height).fill(width));
		}
	});

	test('what has no glyph is an error of the program', () => {
		expect(() => digitRows('12°', SMALL)).toThrow('no block digit for "°"');
	});
});

describe('the way of a turn', () => {
	test('is told by an arrow whose head points down, at the right for clockwise', () => {
		expect(arrowRows('counterclockwise', SMALL, '#').join('\n')).toBe(
			['   #### ', '  #    #', '#####  #', ' ###   #', '  #  ## '].join('\n'),
		);
		expect(arrowRows('clockwise', SMALL, '#').map((row) => [...row].reverse().join(''))).toEqual(
			arrowRows('counterclockwise', SMALL, '#'),
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
		expect(drawn(choiceLines(choices.slice(0, 5), null, 60, 20))).toBe(
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
			const lines = choiceLines(choices, selected, 60, 6);
			expect(lines.length).toBe(6);
			expect(drawn(lines)).toContain(`choice ${selected + 1}`);
		}
		expect(drawn(choiceLines(choices, null, 60, 6))).toContain('(6 more below; arrow keys)');
	});

	test('what has no room is said shorter, else goes on below', () => {
		const long = [
			{ label: 'Slipway gate, port side: never bent (3 bends)', brief: 'Slipway gate, port side', step: 0 },
			{ label: 'the opposite part, begun at the far end of the drawing', step: 1, advised: true },
			{ label: 'leave', step: 2 },
		];
		expect(drawn(choiceLines(long, null, 36, 20))).toBe(
			[
				'  1   Slipway gate, port side',
				'  2 + the opposite part, begun at',
				'      the far end of the drawing',
				'  3   leave',
			].join('\n'),
		);
		// One of which a line is seen is not left out.
		expect(drawn(choiceLines(long, 2, 36, 3))).toBe(['    (2 more above; arrow keys)', '  3   leave', ''].join('\n'));
	});
});

describe('lines', () => {
	test('a number is not parted from its fraction and its unit', () => {
		expect(wrap('was the mark of bend 2 at 39 1/8 in, not at 39 5/8 in?', 28)).toEqual([
			'was the mark of bend 2 at',
			'39 1/8 in, not at 39 5/8 in?',
		]);
		expect(wrap('bend 2 in-line with 3 mm of it', 8)).toEqual(['bend 2', 'in-line', 'with', '3 mm of', 'it']);
	});

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
		expect(drawn([spreadOut([span('left')], [span('right')], 12)])).toBe('left   right');
		expect(drawn([spreadOut([span('much too long')], [span('right')], 12)])).toBe('much … right');
		expect(drawn([cutLine([span('abc'), span('def')], 5)])).toBe('abcd…');
	});
});

describe('how things stand out', () => {
	test('colors only where they are wanted, weight always', () => {
		expect(styleOf('wrong', lookOf({ TERM: 'xterm' }, false))).toEqual({ bold: true, color: 'red' });
		expect(styleOf('wrong', lookOf({ TERM: 'xterm' }, true))).toEqual({ bold: true });
		expect(styleOf('wrong', lookOf({ TERM: 'dumb' }, false))).toEqual({});
	});

	test('ASCII keeps the columns where there are blanks to give', () => {
		expect(asciiOnly('    48.2°')).toBe(' 48.2 deg');
		expect(asciiOnly('   48.2° ± 0.3')).toBe('   48.2 deg +/- 0.3');
		expect(asciiOnly('42°       ')).toBe('42 deg    ');
		expect(asciiOnly('[·|█▒░]')).toBe('[-|#=:]');
		expect(asciiOnly('長')).toBe('?');
	});
});
