/**
 * Finds where a text stops being JSON, and keys written twice. `JSON.parse` names the place in words that differ from one
 * Node to the next or not at all, and drops the first of two equal keys without a word.
 */
import type { Fault, TextPlace, TextWanted } from './facts/index.ts';
import { FaultList, inside } from './fault.ts';

/** Nested deeper than any job file; the walk and `JSON.parse` both recurse. */
const DEEPEST = 100;

const SPACE = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\\p{Cc}]|[\x7f-\x9f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /(?:true|false|null)(?![a-zA-Z0-9_])/y;

/** The faults of a JSON text as a text: every repeated key and, where it breaks off, that place as the last. */
export function scanJson(text: string): { faults: Fault[]; whole: boolean } {
	const scan = new Scan(text);
	try {
		scan.whole();
		return { faults: scan.found.told(), whole: true };
	} catch (error) {
		if (!(error instanceof BrokenOff)) throw error;
		return { faults: [...scan.found.told(), error.fault], whole: false };
	}
}

class BrokenOff extends Error {
	constructor(readonly fault: Fault) {
		super(fault.right.code);
	}
}

class Scan {
	readonly found = new FaultList();
	private at = 0;

	constructor(private readonly text: string) {}

	whole(): void {
		this.value('job', 0);
		if (this.peek() !== '') throw this.broken('end');
	}

	private value(place: string, depth: number): void {
		const next = this.peek();
		if (depth > DEEPEST) throw this.broken('less-nesting');
		if (next === '{') this.object(place, depth);
		else if (next === '[') this.list(place, depth);
		else if (this.take(STRING) === null && this.take(NUMBER) === null && this.take(WORD) === null) this.noValue(next);
	}

	private noValue(next: string): never {
		throw this.broken(next === '"' ? 'closed-text' : 'value');
	}

	private object(place: string, depth: number): void {
		this.at++;
		const keys = new Set<string>();
		if (this.takeChar('}')) return;
		do {
			const start = this.at;
			const next = this.peek();
			const key = this.take(STRING);
			if (key === null) throw this.broken(next === '"' ? 'closed-text' : 'key');
			const name = JSON.parse(key) as string;
			if (keys.has(name)) {
				this.at = start;
				this.peek();
				// Finding the place takes the whole text up to there.
				const { line, column } = this.found.isFull ? NOWHERE : this.place();
				const found = { code: 'key-twice', key: name, line, column } as const;
				this.found.report({ at: inside(place, name), found, right: { code: 'key-once' } });
				this.take(STRING);
			}
			keys.add(name);
			if (!this.takeChar(':')) throw this.broken({ colonAfter: name });
			this.value(inside(place, name), depth + 1);
		} while (this.takeChar(','));
		if (!this.takeChar('}')) throw this.broken('comma-or-brace');
	}

	private list(place: string, depth: number): void {
		this.at++;
		if (this.takeChar(']')) return;
		let index = 0;
		do {
			this.value(inside(place, index), depth + 1);
			index++;
		} while (this.takeChar(','));
		if (!this.takeChar(']')) throw this.broken('comma-or-bracket');
	}

	/** The next character that is not white space; empty at the end. */
	private peek(): string {
		this.take(SPACE);
		return this.text.charAt(this.at);
	}

	private take(pattern: RegExp): string | null {
		pattern.lastIndex = this.at;
		const match = pattern.exec(this.text);
		if (match === null) return null;
		this.at += match[0].length;
		return match[0];
	}

	private takeChar(char: string): boolean {
		if (this.peek() !== char) return false;
		this.at++;
		return true;
	}

	private broken(wants: TextWanted): BrokenOff {
		const rest = this.text.slice(this.at, this.at + 20).split('\n')[0] ?? '';
		const ended = this.at >= this.text.length;
		return new BrokenOff({
			at: 'text',
			found: { ...(ended ? { code: 'end-of-file' } : { code: 'text', text: rest.trim() || rest }), ...this.place() },
			right: { code: 'json', wants, comment: /^(?:\/[/*]|#)/.test(rest) },
		});
	}

	private place(): TextPlace {
		const lines = this.text.slice(0, this.at).split('\n');
		return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
	}
}

/** The place of a fault that is counted only. */
const NOWHERE = { line: 0, column: 0 };
