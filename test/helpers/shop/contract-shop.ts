import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Line, LineTalk, type Talk, TalkHere } from './contract-client.ts';
import type { PlainTube } from './contract-geometry.ts';

/** A folder of its own for one test file: job files and homes. */
export class Shop {
	readonly folder = mkdtempSync(join(tmpdir(), 'contract-'));
	#count = 0;

	home(): string {
		return mkdtempSync(join(this.folder, 'home-'));
	}
	file(job: object | string): string {
		const path = join(this.folder, `job-${this.#count++}.json`);
		writeFileSync(path, typeof job === 'string' ? job : JSON.stringify(job));
		return path;
	}
	close(): void {
		rmSync(this.folder, { recursive: true, force: true });
	}
}

export const RAIL: PlainTube = {
	od: 1.5,
	radius: 6.06,
	stretch: 0,
	markOffset: 0,
	trim: { start: 1, end: 1 },
	bends: [
		{ straight: 12, angle: 40, rotation: 0 },
		{ straight: 14, angle: 55, rotation: 180 },
		{ straight: 13, angle: 30, rotation: 90 },
	],
	last: 10,
};

/** The job file of a plain tube; `more` replaces whole keys of the file. */
export function jobOf(tube: PlainTube, tooling: object = {}, more: object = {}): Record<string, unknown> {
	return {
		pullbook: 'job/1',
		name: 'Skerry Row rail',
		units: 'in',
		tube: { material: '1020-dom', od: tube.od, wall: tube.od * 0.065 },
		tooling: { clr: tube.radius, growth: 1, stretch: tube.stretch, markOffset: tube.markOffset, ...tooling },
		shape: { bends: tube.bends, last: tube.last },
		trim: tube.trim,
		...more,
	};
}

/** Three bends in two planes, growth 1.01 and drawn with the finished radius: clamp and follow leave room. */
export const railJob = (more: object = {}, tooling: object = {}) => {
	const shape = { bends: RAIL.bends, last: RAIL.last, radius: RAIL.radius };
	return jobOf(RAIL, { clr: 6, growth: 1.01, clamp: 4, follow: 1.5, ...tooling }, { shape, ...more });
};

/** An ask without the number of its record, for two that must be the same question. */
export function question(line: Line): Line {
	const { entry: _, ...rest } = line;
	return rest;
}

/** A bender that springs back the same way every time, and an operator who reads it without error. */
export class Operator {
	readonly made = new Map<number, number>();

	answer(ask: Line): Line {
		switch (ask.ask) {
			case 'set':
				return { ready: true };
			case 'pull':
				this.made.set(ask.bend, Math.max(this.made.get(ask.bend) ?? 0, ask.stop * 0.965 - 1.2));
				return { loaded: ask.stop };
			case 'measure': {
				const angle = this.made.get(ask.bend);
				return ask.readings === 2 ? { angles: [angle, angle] } : { angle };
			}
			case 'check':
				return { reading: ask.expect.value };
			case 'confirm':
				return { keep: true };
			default:
				return { do: ask.advice === 'reopen' || ask.advice === 'measure' ? 'accept' : ask.advice };
		}
	}

	/** Plays on to the first ask for which `stop` holds, or to the end. */
	async play(talk: Talk, stop: (ask: Line) => boolean = () => false): Promise<void> {
		for (let i = 0; i < 100; i++) {
			if (talk.lines.at(-1)?.note === 'done' || stop(talk.ask)) return;
			await talk.send(this.answer(talk.ask));
		}
		throw new Error('The session comes to no end.');
	}
}

/** Starts the line mode and reads up to the first ask. */
export async function bend(file: string, home: string, ...more: string[]): Promise<LineTalk> {
	const talk = new LineTalk(['bend', file, '--lines', '--home', home, ...more]);
	await talk.begin();
	return talk;
}

/** The same in the process that is here already. */
export async function bendHere(file: string, home: string, ...more: string[]): Promise<TalkHere> {
	const talk = new TalkHere(['bend', file, '--lines', ...more], home);
	await talk.begin();
	return talk;
}
