import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { status } from '../../src/session/report/views.ts';
import { runProgram, SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { sample } from '../helpers/sample-size.ts';
import { Sitting } from '../helpers/screen/sitting.ts';

/** Ten at full size; three have one before, one at and one after the piece that is killed. */
const PIECES = sample(3, 10);
const KILLED = 2;
let home = '';
let job = '';
beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'batch-'));
	const knee = JSON.parse(readFileSync(SAMPLE_JOBS.find((path) => path.includes('handrail-knee'))!, 'utf8'));
	job = join(home, 'knee.json');
	writeFileSync(job, JSON.stringify({ ...knee, quantity: PIECES }));
});
afterAll(() => rmSync(home, { recursive: true }));

/** One bend a tube: what is shown here is the counting. It takes long since every key goes through a real terminal. */
it(`${PIECES} tubes by numeric pad alone, killed in the middle of one: the count is right afterwards`, {
	timeout: 180_000,
}, async () => {
	const sitting = new Sitting(join(home, 'home'));
	let pty = sitting.start(80, 24, ['bend', job]);
	for (let piece = 1; piece <= PIECES; piece++) {
		await pty.until(new RegExp(`^Piece ${piece} of ${PIECES}`));
		expect(pty.text.includes('Pinch points')).toBe(piece === 1);
		await sitting.open(pty);
		if (piece === KILLED) {
			await sitting.play(pty, (open) => open.ask === 'measure');
			pty.kill('SIGKILL');
			await pty.ended;
			pty = sitting.start(80, 24, ['bend', job]);
			await pty.until(/interrupted/);
			expect(pty.text).toContain(`piece ${piece} of ${PIECES}`);
			await sitting.press(pty, '+');
			await pty.until('Session goes on');
			await sitting.press(pty, '+');
			await pty.until(/^Measure/);
		}
		await sitting.play(pty, () => false);
		await pty.until(`Piece ${piece} of ${PIECES}; ${piece} of ${PIECES} made.`);
		expect(sitting.state().start.piece).toBe(piece);
		expect(status(sitting.state())).toBe('done');
		await sitting.nextPiece(pty);
	}
	expect(await pty.ended).toEqual({ exitCode: 0, signal: 0 });
	expect(sitting.typed).toMatch(/^[\d.+*/\n-]+$/);

	const log = await runProgram(['log', '--json'], { home: sitting.folder });
	const kept = JSON.parse(log.out) as { piece: number; quantity: number; status: string }[];
	expect(kept.map(({ status: stands }) => stands)).toEqual(Array(PIECES).fill('done'));
	expect(kept.map(({ piece }) => piece).sort((a, b) => a - b)).toEqual(Array.from({ length: PIECES }, (_, i) => i + 1));
	expect(kept.every(({ quantity }) => quantity === PIECES)).toBe(true);
});
