import type { Fault, Found, Right } from '../../job/facts/index.ts';
import { asJson } from '../../tube/as-json.ts';
import { counted } from '../counted.ts';
import { foreign } from '../foreign.ts';
import { cannotBeRead } from '../units.ts';
import { checkRightWords, kindsWords, wrongStraightsWords } from './checks.ts';
import { figure } from './figure.ts';
import { formFoundWords, formRightWords } from './form.ts';
import { lineColumn, textFoundWords, textRightWords } from './job-text.ts';
import { shapeRightWords } from './shape.ts';
import { toolingRightWords } from './tooling.ts';
import { valueRightWords, type WrittenWhere } from './value.ts';

/** A fault as it is told: as `check --json` prints it. */
export interface ToldFault {
	at: string;
	found: string;
	right: string;
}

export function toldFault({ at, found, right, orWithout }: Fault): ToldFault {
	const without = orWithout === undefined ? '' : `, or no "${orWithout}"`;
	return { at: atWords(at, found), found: foundWords(found), right: `${rightWords(right, 'file')}${without}` };
}

/** The same of what was typed at a question, where nothing stands in quotes. */
export function typedFaultWords({ found, right, orWithout }: Fault): string {
	switch (right.code) {
		case 'number-as-written':
			return `${cannotBeRead(found.code === 'value' ? String(found.value) : '', formRightWords(right))}.`;
		case 'two-straights':
		case 'not-parallel':
		case 'parallel':
			return wrongStraightsWords(right);
	}
	const without = orWithout === undefined ? '' : `, or no "${orWithout}"`;
	return `Not ${foundWords(found)}; write ${rightWords(right, 'typed')}${without}.`;
}

function atWords(at: string, found: Found): string {
	return found.code === 'text' || found.code === 'end-of-file' ? lineColumn(found) : at;
}

/** One fault as a sentence. */
export function faultWords(fault: Fault): string {
	const { at, found, right } = toldFault(fault);
	return `${at}: found ${found}; write ${right}`;
}

/** `1 fault`, `3 faults`. */
export function countOf(faults: readonly Fault[]): string {
	return counted(faults.length, 'fault');
}

export const soundWords = (file: string): string => `${foreign(file)}: ok`;

/** A line for the file, and one a fault. */
export function faultLines(file: string, faults: readonly Fault[]): string {
	const lines = faults.map((fault) => `  ${foreign(faultWords(fault))}`);
	return [`${foreign(file)}: ${countOf(faults)}`, ...lines].join('\n');
}

function foundWords(found: Found): string {
	switch (found.code) {
		case 'nothing':
			return 'nothing';
		case 'value': {
			const value = typeof found.value === 'number' ? figure(found.value) : asJson(found.value);
			return found.kept ? `${value}, kept with the bender and die` : value;
		}
		case 'list-of':
			return `a list of ${found.length}`;
		case 'more-faults':
			return `${found.count} more ${found.count === 1 ? 'fault' : 'faults'}`;
		case 'both-shapes':
			return 'both "bends" and "points"';
		case 'neither-shape':
			return 'neither "bends" nor "points"';
		case 'kinds':
			return kindsWords(found.kinds);
		case 'rise-and-run':
		case 'rise-at':
			return formFoundWords(found);
		default:
			return textFoundWords(found);
	}
}

function rightWords(right: Right, where: WrittenWhere): string {
	switch (right.code) {
		case 'readable-file':
		case 'key-once':
		case 'json':
			return textRightWords(right);
		case 'radius-of-die':
		case 'radius-at-least':
		case 'radius-at-most':
		case 'dies':
		case 'other-die-name':
		case 'die-of-job':
			return toolingRightWords(right);
		case 'shape':
		case 'one-shape':
		case 'bends':
		case 'points':
		case 'point':
		case 'room':
		case 'three-points':
		case 'another-point':
		case 'out-of-line':
		case 'aside':
		case 'further':
			return shapeRightWords(right);
		case 'checks':
		case 'a-check':
		case 'one-kind':
		case 'other-check-name':
		case 'one-of':
		case 'one-key':
		case 'other-straight':
		case 'other-place':
		case 'two-straights':
		case 'not-parallel':
		case 'parallel':
			return checkRightWords(right);
		case 'answer':
		case 'choice':
		case 'offset':
		case 'longer-offset':
		case 'number-as-written':
			return formRightWords(right);
		default:
			return valueRightWords(right, where);
	}
}
