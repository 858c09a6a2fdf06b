import { Box, type Key as InkKey, useInput, useStdout } from 'ink';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { type Size, sizeOf } from '../../terminal/output.ts';
import { frameOf } from './app-frame.ts';
import type { Controller } from './controller.ts';
import { FrameView } from './FrameView.tsx';
import { keyOf } from './keys.ts';
import type { Look } from './look.ts';

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
