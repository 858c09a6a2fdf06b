import { give, open, type Run } from './session-run.ts';

const asks = (run: Run, kind: string) => (run.outputs.at(-1) as { ask?: string }).ask === kind;

/** Sets the tube and pulls the bend at work so that its measured angle is `angle`; what was doubted stands. */
export function bendTo(run: Run, angle: number): Run {
	let now = give(run, { ready: true });
	do now = give(now, { loaded: open(now, 'pull').stop });
	while (asks(now, 'pull'));
	now = give(now, open(now, 'measure').readings === 2 ? { angles: [angle, angle] } : { angle });
	while (asks(now, 'confirm')) now = give(now, { keep: true });
	return now;
}

/** The same, the checks that follow skipped, down to `decide`. */
export function bendAndSkip(run: Run, angle: number): Run {
	let now = bendTo(run, angle);
	while (asks(now, 'check')) now = give(now, { skip: true });
	return now;
}
