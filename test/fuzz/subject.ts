import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type fc from 'fast-check';

/** Says what a case has come by, so that a run can tell what it covered. */
export type Cover = (what: string) => void;

/** Something that takes what it is given from outside, the cases it is given, and what must hold of each. */
export interface Subject<Case> {
	name: string;
	cases: fc.Arbitrary<Case>;
	/** @throws where something does not hold */
	holds(given: Case, cover: Cover): void | Promise<void>;
	/** The case as the corpus keeps it, where it is made while it runs. */
	kept?(given: Case): Case;
}

const CORPUS = join(import.meta.dirname, '..', 'fixtures', 'fuzz');

export const corpusPath = (name: string): string => join(CORPUS, `${name}.jsonl`);

/** Cases that once did not hold. */
export function corpusOf<Case>({ name }: Subject<Case>): Case[] {
	const path = corpusPath(name);
	if (!existsSync(path)) return [];
	const lines = readFileSync(path, 'utf8').split('\n');
	return lines.filter((line) => line !== '').map((line) => JSON.parse(line) as Case);
}
