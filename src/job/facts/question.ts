/** What the form asks, and the answers that it offers; `words` has the sentences. Bends, straights and points count from 1. */
import type { CheckKind } from '../../session/protocol/kinds.ts';
import type { Axis, CornerName, EndName, WidthSurface } from '../../tube/job.ts';
import type { FieldName } from '../../tube/tooling-fields.ts';
import type { Units } from '../../units/units.ts';

/** A field that most jobs leave out, by its place in the file. */
export type FieldPlace =
	| `tooling.${Exclude<FieldName, 'clr' | 'clamp' | 'follow'>}`
	| 'shape.radius'
	| `tolerance.${'under' | 'over' | 'length' | 'rotation' | 'shape' | 'direction'}`
	| 'quantity'
	| 'risk';

/** What a check has to be told. */
export type CheckPart =
	| 'drop-from'
	| 'drop-to'
	| 'drop-surface'
	| 'between'
	| 'and'
	| 'span-from'
	| 'span-to'
	| 'out-of-plane'
	| 'out-straight'
	| 'width-surface'
	| 'overall-axis'
	| 'ovality-bend';

/** The questions that are the same for every job. */
export type PlainQuestion =
	| ('name' | 'units' | 'material' | 'materialName' | 'od' | 'wall' | 'stock' | 'notes')
	| ('die' | 'bender' | 'dieName' | 'clr' | 'clamp' | 'follow')
	| ('shape' | 'rise' | 'last' | 'flat')
	| ('heat' | 'mayOpen' | 'trimStart' | 'trimEnd' | 'copeAngle' | 'copeOffset' | 'copeTurn' | 'checkKind')
	| ('bendDieName' | 'bendDieClr');

export type QuestionFact =
	| { code: PlainQuestion }
	| { code: 'field'; field: FieldPlace }
	| { code: 'dieFigure'; die: string; figure: FieldName }
	| { code: 'dieCalled'; die: string }
	| { code: 'yield' | 'modulus'; in: 'ksi' | 'MPa' }
	| { code: 'piece' | 'straight' | 'angle' | 'turn' | 'turnBy' | 'bendDie'; bend: number }
	| { code: 'both-angles' }
	| { code: 'run'; over: 'corners' | 'tangents' }
	/** `further`: there are points enough without it. */
	| { code: 'x' | 'y' | 'z'; point: number; further: boolean }
	| { code: 'endFit' | 'copeOd'; end: EndName }
	| { code: 'checkPart'; part: CheckPart }
	| { code: 'checkTolerance'; kind: CheckKind }
	/** `usual`: what it is called if nothing is written. */
	| { code: 'checkName'; usual: string };

/** Answers that say all by themselves. */
export type PlainOption =
	| ('none' | 'not-known' | 'leave-out' | 'as-usual' | 'shop-bender' | 'by-radius')
	| ('inches' | 'millimeters' | 'other-material' | 'other-die' | 'other-die-named')
	| ('bend-by-bend' | 'by-corners' | 'last-straight' | 'flat' | 'not-flat' | 'no-more-points')
	| ('same-way' | 'same-way-as-before' | 'opposite-way' | 'other-plane')
	| ('square-end' | 'coped-end' | 'square-joint' | 'on-inside' | 'may-open' | 'never-open');

export type OptionFact =
	| { code: PlainOption }
	/** `bend`: the first that it gives. */
	| { code: 'piece'; piece: 'bend' | 'corners' | 'tangents' | 'slope'; bend: number }
	| { code: 'material'; key: string; yield: number; in: 'ksi' | 'MPa'; source: string }
	| { code: 'die'; bender: string; die: string; clr: number | null; units: Units }
	/** The job's own, by its name where it has one; another that the job knows or that is kept with its bender. */
	| { code: 'jobs-die'; name: string | undefined }
	| { code: 'further-die'; die: string; clr: number | null; units: Units }
	| { code: 'named'; name: string }
	| { code: 'check'; kind: CheckKind }
	| { code: 'straight' | 'bend'; number: number }
	| { code: 'corner'; of: CornerName }
	| { code: 'outermost'; bend: number }
	| { code: 'start-of'; straight: number }
	| { code: 'drop-surface'; of: 'center' | 'across' }
	| { code: 'width'; of: WidthSurface }
	| { code: 'axis'; axis: Axis };
