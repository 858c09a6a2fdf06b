import type { Size } from '../../terminal/output.ts';
import { WAITING } from '../../words/screen/frame.ts';
import { sessionFrame } from '../session/session-frame.ts';
import { wrapped } from '../text/line.ts';
import { type Frame, frame } from './frame.ts';
import type { Look } from './look.ts';
import { NOTHING } from './prompt.ts';
import { readerFrame } from './reader-state.ts';
import type { Seen } from './seen.ts';

/** The whole screen in that state. Pure. */
export function frameOf(state: Seen, size: Size, look: Look): Frame {
	switch (state.view) {
		case 'session':
			return sessionFrame(state, size, look);
		case 'reader':
			return readerFrame(state.reader, size, look);
		case 'home': {
			const { where = [], picture, ...view } = state.shown;
			const { entry, message } = state.home;
			const drawn = picture === undefined ? {} : { picture: picture(look) };
			return frame({ ...view, ...drawn, where, entry, message }, size, look);
		}
		case 'waiting':
			return frame(
				{
					title: state.title ?? WAITING,
					where: [],
					body: ({ columns }) => [{ rank: 0, lines: wrapped(state.says ?? '', columns) }],
					prompt: { label: '', empty: '' },
					entry: NOTHING,
					message: null,
				},
				size,
				look,
			);
	}
}
