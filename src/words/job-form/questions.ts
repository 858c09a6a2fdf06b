import type { CheckPart, PlainQuestion, QuestionFact } from '../../job/facts/question.ts';
import { capital } from '../../units/format.ts';
import { foreignName } from '../foreign.ts';
import { FIELD_WORDS } from '../tooling-fields.ts';
import { placeWords } from './fields.ts';

/** What is asked, as the label of the field or the list, and a sentence on what is meant where one helps. */
interface AskedWords {
	label: string;
	help?: string;
}

const says = (label: string, help?: string): AskedWords => ({ label, ...(help === undefined ? {} : { help }) });

const ALONG_THE_TUBE =
	'Looking along the tube from the start end to the far end: clockwise positive, counterclockwise negative.';

const PLAIN_QUESTIONS: Readonly<Record<PlainQuestion, AskedWords>> = {
	name: says('What the part is called'),
	units: says('Lengths on the drawing are in'),
	material: says(
		'Material of the tube',
		'The strength is the least that the standard asks for. A certificate says more: then take another.',
	),
	materialName: says('What the material is called'),
	od: says('Outside diameter'),
	wall: says('Wall'),
	stock: says(
		'Length of the piece in hand',
		'With it the program says before the first cut whether the piece is long enough.',
	),
	notes: says('Anything worth remembering'),
	die: says('Bender and die'),
	bender: says(
		'What the bender is called',
		'Springback is learned under the names of bender and die. Enter alone: shop.',
	),
	dieName: says('What the die is called', 'Enter alone: named by its radius and the diameter.'),
	clr: says(capital(FIELD_WORDS.clr.says)),
	bendDieName: says('What the die is called', 'Springback is learned under its name.'),
	bendDieClr: says(
		capital(FIELD_WORDS.clr.says),
		'What the clamp needs, and the rest, is as kept for this die, else as in the job.',
	),
	clamp: says(capital(FIELD_WORDS.clamp.says), 'From the mark back.'),
	follow: says(capital(FIELD_WORDS.follow.says), 'What must still lie behind a bend while it is pulled.'),
	shape: says('How the shape is given'),
	rise: says('Rise: how far the tube is led over', 'Square to the tube, center line to center line.'),
	last: says('Straight after the last bend', 'From where it ends to the finished far end.'),
	flat: says('The tube is'),
	heat: says('Heat, lot or certificate number', 'It is kept with every session of this job.'),
	mayOpen: says('May a bend be opened again, worked back'),
	trimStart: says('Trim at the start end, cut off after bending'),
	trimEnd: says('Trim at the far end'),
	copeAngle: says(
		'Angle between the two center lines',
		'Below 90 the other tube leans back over this one on the side of the joint line, which is asked last.',
	),
	copeOffset: says(
		'How far the two center lines pass each other',
		'Looking out of the end with the joint line up: to the right positive, to the left negative.',
	),
	copeTurn: says("Where round the tube the joint line lies, from bend 1's inside", ALONG_THE_TUBE),
	checkKind: says('What is to be checked'),
};

const PART_QUESTIONS: Readonly<Record<CheckPart, string>> = {
	'drop-from': 'From the line of which straight',
	'drop-to': 'To where',
	'drop-surface': 'Measured to',
	between: 'Between which straight',
	and: 'and which',
	'span-from': 'From where',
	'span-to': 'To where',
	'out-of-plane': 'Out of the plane of which straight',
	'out-straight': 'How far the start of which straight lies',
	'width-surface': 'Measured',
	'overall-axis': 'Along which way',
	'ovality-bend': 'In the middle of which bend',
};

/** A question of the job form. */
export function askedWords(is: QuestionFact): AskedWords {
	switch (is.code) {
		case 'field': {
			const { label, help, without } = placeWords(is.field);
			return says(label, `${help === undefined ? '' : `${help} `}Left out: ${without}.`);
		}
		case 'dieFigure':
			return says(
				capital(FIELD_WORDS[is.figure].says),
				`Of the die "${foreignName(is.die)}". Left out: as kept for this die, else as in the job.`,
			);
		case 'dieCalled':
			return says('What the die is called', 'Its bends are moved to the new name.');
		case 'yield':
			return says(`Its yield strength, ${is.in}`, 'As the certificate of the tube has it.');
		case 'modulus':
			return says(
				`Its elastic modulus, ${is.in}`,
				'Steel has about 29000 ksi or 200000 MPa, aluminum 10000 ksi or 69000 MPa, titanium 15000 ksi or 105000 MPa.',
			);
		case 'piece':
		case 'straight':
		case 'angle':
		case 'turn':
		case 'turnBy':
		case 'bendDie':
		case 'both-angles':
		case 'run':
			return bendAskedWords(is);
		case 'x':
		case 'y':
		case 'z':
			return pointAskedWords(is);
		case 'endFit':
			return says(`The ${is.end} end is`);
		case 'copeOd':
			return says(`Outside diameter of the tube that the ${is.end} end meets`);
		case 'checkPart':
			return says(PART_QUESTIONS[is.part]);
		case 'checkTolerance':
			return says(is.kind === 'angle' ? 'How far it may be off, degrees' : 'How far it may be off');
		case 'checkName':
			return says('What the check is called', `Enter alone: ${is.usual}.`);
		default:
			return PLAIN_QUESTIONS[is.code];
	}
}

type QuestionOf<C extends QuestionFact['code']> = Extract<QuestionFact, { code: C }>;

function bendAskedWords(
	is:
		| QuestionOf<'piece' | 'straight' | 'angle' | 'turn' | 'turnBy' | 'bendDie'>
		| QuestionOf<'both-angles'>
		| QuestionOf<'run'>,
): AskedWords {
	switch (is.code) {
		case 'piece':
			return says(is.bend === 1 ? 'What comes first' : 'What comes then');
		case 'straight':
			return says(
				`Straight before bend ${is.bend}, tangent to tangent`,
				is.bend === 1 ? 'From the finished start end to where the bend begins.' : undefined,
			);
		case 'angle':
			// Once is enough.
			return says(
				`Angle of bend ${is.bend}`,
				is.bend === 1 ? 'How far the tube is bent there: straight is 0.' : undefined,
			);
		case 'both-angles':
			return says('Angle of both bends');
		case 'turn':
			return says(`Bend ${is.bend} goes`);
		case 'turnBy':
			return says(`How far bend ${is.bend} is turned from the bend before`, ALONG_THE_TUBE);
		case 'bendDie':
			return says(`Bend ${is.bend} is made on`);
		case 'run':
			return says(
				'Run: within what length along the tube',
				is.over === 'tangents'
					? 'From where the first bend begins to where the second one ends.'
					: 'From sharp corner to sharp corner.',
			);
	}
}

const ALONG = { x: 'along, x', y: 'across, y', z: 'up, z' } as const;

function pointAskedWords({ code, point, further }: QuestionOf<'x' | 'y' | 'z'>): AskedWords {
	if (code === 'x' && further)
		return says(`A further point, ${point}: ${ALONG.x}`, 'Was the last point the finished far end? Then press +.');
	const label = `${point === 1 ? 'The start end' : `Point ${point}`}: ${ALONG[code]}`;
	const isFirst = code === 'x' && point === 1;
	return says(
		label,
		isFirst ? 'The first point is the finished start end, the last one the finished far end.' : undefined,
	);
}

/** What the questions of a page are about. */
export function titleWords({ code }: QuestionFact): string {
	switch (code) {
		case 'name':
		case 'mayOpen':
		case 'notes':
		case 'field':
			return 'The job';
		case 'units':
		case 'material':
		case 'materialName':
		case 'yield':
		case 'modulus':
		case 'od':
		case 'wall':
		case 'stock':
		case 'heat':
			return 'The tube';
		case 'die':
		case 'bender':
		case 'dieName':
		case 'clr':
		case 'clamp':
		case 'follow':
		case 'dieFigure':
		case 'dieCalled':
			return 'Bender and die';
		case 'trimStart':
		case 'trimEnd':
		case 'endFit':
		case 'copeOd':
		case 'copeAngle':
		case 'copeOffset':
		case 'copeTurn':
			return 'The ends';
		case 'checkKind':
		case 'checkPart':
		case 'checkTolerance':
		case 'checkName':
			return 'A check';
		default:
			return 'The shape';
	}
}
