import type { CheckKind } from '../../session/protocol/kinds.ts';
import type { EndName, Units } from '../../tube/job.ts';
import type { FieldName, TOOLING_FIELDS } from '../../tube/tooling-fields.ts';
import { JOB_FORMAT } from '../read.ts';

/** A number as it stands in a job file: plain, or a length as it was written. */
export type FileValue = number | string;

export interface BendJson {
	straight: FileValue;
	angle: number;
	rotation: number;
	die?: string;
}

/** What an end meets. */
export interface CopeJson {
	od?: FileValue;
	angle?: number;
	offset?: FileValue;
	turn?: number;
}

/** Further dies by their names. */
export type DiesJson = Readonly<Record<string, Readonly<Record<string, FileValue>>>>;

type ToolingJson = Partial<Record<keyof typeof TOOLING_FIELDS, FileValue>> & {
	bender?: string;
	die?: string;
	dies?: DiesJson;
};

/** What a job file holds, as far as it is known. */
export interface JobJson {
	pullbook: typeof JOB_FORMAT;
	name?: string;
	units?: Units;
	tube?: { material?: unknown; od?: FileValue; wall?: FileValue; stock?: FileValue; heat?: string };
	tooling?: ToolingJson;
	shape?: { bends?: BendJson[]; last?: FileValue; radius?: FileValue; points?: FileValue[][] };
	trim?: { start?: FileValue; end?: FileValue };
	tolerance?: {
		under?: number;
		over?: number;
		length?: FileValue;
		rotation?: number;
		shape?: FileValue;
		direction?: number;
	};
	risk?: number;
	mayOpen?: boolean;
	quantity?: number;
	ends?: Partial<Record<EndName, { cope?: CopeJson }>>;
	checks?: unknown[];
	notes?: string;
}

/** Which question is open. */
export type QuestionPlace =
	| 'name'
	| 'units'
	| 'material'
	| 'materialName'
	| 'yield'
	| 'modulus'
	| 'od'
	| 'wall'
	| 'stock'
	| 'die'
	| 'bender'
	| 'dieName'
	| 'clr'
	| 'clamp'
	| 'follow'
	| 'shape'
	| 'piece'
	| 'straight'
	| 'angle'
	| 'turn'
	| 'turnBy'
	| 'bendDie'
	| 'bendDieName'
	| 'bendDieClr'
	| 'dieFigure'
	| 'dieCalled'
	| 'rise'
	| 'run'
	| 'last'
	| 'flat'
	| 'x'
	| 'y'
	| 'z'
	| 'heat'
	| 'mayOpen'
	| 'trimStart'
	| 'trimEnd'
	| 'endFit'
	| 'copeOd'
	| 'copeAngle'
	| 'copeOffset'
	| 'copeTurn'
	| 'checkKind'
	| 'checkPart'
	| 'checkTolerance'
	| 'checkName'
	| 'notes'
	| 'field'
	| 'overview';

/** How the bends that are asked for now are given: one by its angle, or the two of an offset. */
export type GivenPiece = 'bend' | 'corners' | 'tangents' | 'slope';

/** The answers for a bend, an offset, a point, a material or a check that is not whole yet; of an end, which. */
export interface Unfinished {
	end?: EndName;
	piece?: GivenPiece;
	straight?: FileValue;
	angle?: number;
	rise?: number;
	run?: number;
	point?: FileValue[];
	check?: { kind: CheckKind; values: unknown[]; tolerance?: FileValue };
	material?: { name?: string; yield?: number };
	/** Of the bend in hand, or one whose figure is asked for. */
	die?: string;
	figure?: FieldName;
}

/** A job that is being written, one question at a time. */
export interface Draft {
	file: JobJson;
	at: QuestionPlace;
	/** The bend, point or check in hand, from 0, and whether it is added, takes another's place or goes in before it. */
	item: number;
	put: 'add' | 'instead' | 'before';
	/** The field in hand, as `tooling.maxAngle`, where `at` is `field`. */
	field: string;
	part: Unfinished;
	/** Whether the points lie in one plane, so that two numbers do for each. */
	flat: boolean;
	/** Once everything was asked, a question that is asked again leads back to the overview. */
	whole: boolean;
}

/** A job of which nothing is known. */
export function newDraft(): Draft {
	return { ...blank({ pullbook: JOB_FORMAT }), at: 'name' };
}

/** A job as its file has it, to be changed. Where `readJob` finds faults in it, its parts must at least be of the right kinds. */
export function draftOf(raw: unknown): Draft {
	const file = raw as JobJson;
	const flat = file.shape?.points?.every((point) => point.length === 2) ?? true;
	return { ...blank(file), at: 'overview', whole: true, flat };
}

function blank(file: JobJson): Draft {
	return { file, at: 'name', item: 0, put: 'add', field: '', part: {}, flat: true, whole: false };
}

export function unitsOf({ file }: Pick<Draft, 'file'>): Units {
	return file.units ?? 'in';
}

export function bendsIn({ file }: Pick<Draft, 'file'>): number {
	const { bends, points } = file.shape ?? {};
	return points === undefined ? (bends?.length ?? 0) : Math.max(0, points.length - 2);
}
