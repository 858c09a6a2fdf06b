import { Box, type Key as InkKey, useInput, useStdout } from 'ink';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { type Size, sizeOf } from '../terminal/output.ts';
import type { AppState, Controller } from './controller.ts';
import { FrameView } from './FrameView.tsx';
import { type Frame, frame } from './frame.ts';
import { homeView } from './home-state.ts';
import { keyOf } from './keys.ts';
import type { Look } from './look.ts';
import { NOTHING } from './prompt.ts';
import { readerFrame } from './reader-state.ts';
import { sessionFrame } from './session-frame.ts';

/** The whole interface: one frame, drawn from the controller's state, and the one place where keys come in. */
export function App({ controller, look }: { controller: Controller; look: Look }) {
	const state = useSyncExternalStore(controller.subscribe, controller.snapshot);
	const size = useSize();
	// The handler never changes, so Ink never unsubscribes it: no key falls between two subscriptions.
	const onKey = useCallback(
		(input: string, inkKey: InkKey) => {
			const key = keyOf(input, inkKey);
			if (key !== null) controller.key(key);
		},
		[controller],
	);
	useInput(onKey);
	const drawn = useMemo(() => frameOf(state, size, look), [state, size, look]);
	return (
		<Box height={size.rows - 1} width={size.columns} flexDirection="column">
			<FrameView
				frame={drawn}
				look={look}
				text={controller.text()}
				onText={(value) => controller.textChanged(value)}
				onEntered={() => controller.textEntered()}
			/>
		</Box>
	);
}

function frameOf(state: AppState, size: Size, look: Look): Frame {
	switch (state.view) {
		case 'session':
			return sessionFrame(state.session, size, look);
		case 'reader':
			return readerFrame(state.reader, size, look);
		case 'home': {
			const { where = '', picture, ...view } = homeView(state.home);
			const { entry, message } = state.home;
			const drawn = picture === undefined ? {} : { picture: picture(look) };
			return frame({ ...view, ...drawn, where, entry, message }, size, look);
		}
		case 'waiting':
			return frame(
				{
					title: 'One moment',
					where: '',
					body: () => [],
					prompt: { label: '', empty: '' },
					entry: NOTHING,
					message: null,
				},
				size,
				look,
			);
	}
}

/** The terminal's size, followed as it changes. Ink 6 has no hook for it. */
function useSize(): Size {
	const { stdout } = useStdout();
	const key = useSyncExternalStore(
		useCallback(
			(changed) => {
				stdout.on('resize', changed);
				return () => stdout.off('resize', changed);
			},
			[stdout],
		),
		() => {
			const { columns, rows } = sizeOf(stdout);
			return `${columns}x${rows}`;
		},
	);
	return useMemo(() => {
		const [columns = 0, rows = 0] = key.split('x').map(Number);
		return { columns, rows };
	}, [key]);
}
