import type { TestResult } from '../../fit/test-piece.ts';
import { ImpossiblePiece } from '../../fit/test-piece.ts';
import { understood } from '../../units/understood.ts';
import { inWhat } from '../../words/job-form/pages.ts';
import { ofDie } from '../../words/screen/benders.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import {
	impossiblePieceWords,
	PIECE,
	PIECE_WORDS,
	type PieceReading,
	pieceReadWords,
	pieceToldWords,
} from '../../words/test-piece.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Section } from '../session/pages/page.ts';
import { line, wrapped } from '../text/line.ts';
import {
	nextPieceReading,
	PIECE_READINGS,
	type PieceForm,
	pieceResult,
	quantityOf,
	withReading,
} from './piece-form.ts';

/** The page of a test piece: one reading after the other, then what they tell. */
export function pieceView(form: PieceForm): HomeView {
	const reading = nextPieceReading(form);
	return reading === null ? resultView(form) : readingView(form, reading);
}

function pieceStep(piece: PieceForm): HomeStep {
	return { step: 'bench', at: { bench: 'piece', piece } };
}

function back(form: PieceForm): { label: string; step: HomeStep } {
	const { bender, die, given } = form;
	if (given.length === 0) return { label: KEY_SAYS.back, step: { step: 'bench', at: { bench: 'die', bender, die } } };
	return { label: KEY_SAYS.back, step: pieceStep({ ...form, given: given.slice(0, -1) }) };
}

function readingView(form: PieceForm, reading: PieceReading): HomeView {
	const { label, help } = PIECE_WORDS[reading];
	const kind = quantityOf(reading);
	return {
		title: PIECE.step(form.given.length + 1, PIECE_READINGS.length),
		where: [ofDie(form.bender, form.die)],
		prompt: {
			label: inWhat(label, kind, form.units),
			read: (text) => pieceStep(withReading(form, text)),
			understood: (text) => understood(text, kind, form.units),
			...(reading === 'straight' ? { plus: { label: PIECE.notRead, step: pieceStep(withReading(form, null)) } } : {}),
			back: back(form),
			empty: PIECE.empty,
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped(help, columns) }, readSoFar(form)],
	};
}

function readSoFar({ given, units }: PieceForm): Section {
	const rows = given.map((value, at) => pieceReadWords(PIECE_READINGS[at]!, value, units));
	return { rank: 1, lines: rows.map((row) => line(row, 'quiet')) };
}

function resultView(form: PieceForm): HomeView {
	const told = resultOrWords(form);
	const { bender, die, units } = form;
	if (typeof told === 'string') {
		return {
			title: PIECE.title,
			prompt: { label: '', back: back(form), empty: PIECE.again },
			body: ({ columns }) => [{ rank: 0, lines: wrapped(told, columns, 'wrong') }, readSoFar(form)],
		};
	}
	const fields = {
		growth: told.growth.value,
		markOffset: told.markOffset.value,
		...(told.stretch === null ? {} : { stretch: told.stretch.value }),
	};
	const keep: HomeStep = {
		step: 'shop',
		change: { bender, die, changes: { units, fields } },
		next: { bench: 'die', bender, die },
		said: PIECE.kept(die),
	};
	return {
		title: PIECE.told,
		where: [ofDie(bender, die)],
		prompt: {
			label: '',
			plus: { label: PIECE.keep, step: keep },
			back: back(form),
			empty: PIECE.keepEmpty,
		},
		body: ({ columns }) => toldSections(told, form, columns),
	};
}

function resultOrWords(form: PieceForm): TestResult | string {
	try {
		return pieceResult(form);
	} catch (error) {
		if (error instanceof ImpossiblePiece) return impossiblePieceWords(error);
		throw error;
	}
}

function toldSections(told: TestResult, form: PieceForm, columns: number): Section[] {
	const { figures, on90, coarse } = pieceToldWords(told, form);
	return [
		{ rank: 0, lines: figures.map((text) => line(text, 'strong')) },
		{ rank: 0, lines: wrapped(on90, columns) },
		{ rank: 1, lines: coarse === '' ? [] : wrapped(coarse, columns, 'alert') },
	];
}
