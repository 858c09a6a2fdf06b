import { useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { FrameView } from '../../src/screen/shell/FrameView.tsx';
import { lookOf } from '../../src/screen/shell/look.ts';
import { line } from '../../src/screen/text/line.ts';
import { type Mounted, mount } from '../helpers/screen/mount.tsx';

const LOOK = lookOf({ TERM: 'xterm' }, false);
const FRAME = { lines: [line('Why?'), line(''), line('Enter keeps it')], textAt: 1, short: false };
let mounted: Mounted | null = null;

function Form({ onKept }: { onKept(text: string): void }) {
	const [text, setText] = useState('');
	return <FrameView frame={FRAME} look={LOOK} text={text} onText={setText} onEntered={() => onKept(text)} />;
}

afterEach(() => mounted?.unmount());

test('a text is written between the other rows, and given whole with Enter', async () => {
	const kept: string[] = [];
	mounted = mount(<Form onKept={(text) => kept.push(text)} />, { columns: 60, rows: 20 }, () => true);
	const { terminal } = mounted;
	await terminal.until('Enter keeps it');
	terminal.type('wrong tubes\x7f, ½ in short\x1b[1;5P');
	await terminal.until('> wrong tube, ½ in short');
	expect(terminal.text).toBe('Why?\n> wrong tube, ½ in short\nEnter keeps it');
	terminal.type('\n');
	terminal.type('!');
	await terminal.until('short!');
	expect(kept).toEqual(['wrong tube, ½ in short']);
});
