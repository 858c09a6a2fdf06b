import type { Fault } from '../../../src/job/facts/index.ts';
import type { HomePort, JobRow, SessionRow } from '../../../src/screen/home/home-port.ts';
import type { Opened } from '../../../src/screen/review/review-port.ts';
import type { LivePort } from '../../../src/screen/session/live-port.ts';
import type { AmendPreview } from '../../../src/session/advice/amend-preview.ts';
import type { Answered } from '../../../src/session/log/answered.ts';
import type { Event, Reading } from '../../../src/session/log/events.ts';
import { readingsIn } from '../../../src/session/log/events.ts';
import type { Answer, HalfAnswer } from '../../../src/session/protocol/action.ts';
import type { Ask, SetAsk } from '../../../src/session/protocol/asks.ts';
import type { Output } from '../../../src/session/protocol/notes.ts';
import { BOUNDS } from '../../../src/tube/bounds.ts';
import type { BentAs, Job } from '../../../src/tube/job.ts';
import { finishedShape } from '../../../src/tube/resolve.ts';
import type { Shape } from '../../../src/tube/shape.ts';
import { FakeWorkshop } from './fake-workshop.ts';

/** A job of the screen tests' own: an arch of four bends with one check of each kind. */
export const ARCH: Job = {
	name: 'Aft arch',
	units: 'in',
	tube: { material: { name: '4130-normalized', yield: 75, modulus: 29000 }, od: 1.75, wall: 0.12, stock: 120 },
	tooling: {
		bender: 'bay two',
		die: '5.5 in',
		clr: 5.5,
		growth: 1.01,
		stretch: 0,
		clamp: 3.5,
		follow: 2,
		markOffset: 0,
		maxAngle: 125,
		dialStep: 0.5,
		tape: 1 / 16,
		floor: null,
	},
	shape: {
		kind: 'bends',
		bends: [
			{ straight: 14, angle: 42, rotation: 0 },
			{ straight: 21, angle: 48, rotation: 0 },
			{ straight: 24, angle: 48, rotation: 180 },
			{ straight: 21, angle: 42, rotation: 0 },
		],
		last: 14,
	},
	trim: { start: 0.5, end: 0.5 },
	tolerance: { under: 0.5, over: 0.5, length: 1 / 16, rotation: 1, shape: 1 / 4, direction: 1 },
	risk: 0.02,
	mayOpen: true,
	quantity: 1,
	checks: [
		{ name: 'rise', kind: 'drop', from: 1, to: { bend: 2 }, surface: 'across', tolerance: 1 / 16 },
		{ name: 'legs', kind: 'angle', between: [1, 3], tolerance: 0.5 },
		{ name: 'reach', kind: 'span', from: { end: 'start' }, to: { bend: 3 }, tolerance: 1 / 8 },
		{ name: 'lie', kind: 'out', plane: [1, 2], to: { straight: 4 }, tolerance: 1 / 8 },
		{ name: 'section', kind: 'ovality', bend: 2, tolerance: 0.1 },
	],
	notes: 'Over the aft well.',
};

/** A session whose asks are given beforehand: each answer leads to the next outputs. */
export class FakeLive implements LivePort {
	readonly id = 'aft-arch-1';
	readonly logPath = '/logs/aft-arch-1.log';
	readonly answers: Answer[] = [];
	/** First numbers of answers that were kept before the second came. */
	readonly drafts: HalfAnswer[] = [];
	readonly shown: Output[];
	closed = false;
	readonly messages: string[] = [];
	entries: Answered[];
	/** What the next answer throws instead of being taken. */
	fault: Error | null = null;
	/** What a correction would change. */
	would: AmendPreview | null = null;
	/** What the log has to say when the next answer is taken. */
	said: string | null = null;
	private open: Ask | null;

	constructor(
		opening: readonly Output[],
		private readonly replies: Output[][] = [],
		readonly job: Job = ARCH,
		history: readonly Answered[] = [],
	) {
		this.shown = [...opening];
		this.open = lastAsk(opening);
		this.entries = [...history];
	}

	get drawn(): Shape {
		return finishedShape(this.job, { value: this.job.tooling.growth ?? 1 });
	}

	get outputs(): readonly Output[] {
		return this.shown;
	}

	ask(): Ask | null {
		return this.open;
	}

	placed(): SetAsk | null {
		return this.shown.findLast((output): output is SetAsk => 'ask' in output && output.ask === 'set') ?? null;
	}

	answer(answer: Answer): Output[] {
		if (this.fault !== null) throw this.fault;
		if (answer.action?.do === 'draft') {
			this.drafts.push(answer.action.draft);
			return this.open === null ? [] : [this.open];
		}
		this.answers.push(answer);
		if (this.said !== null) this.messages.push(this.said);
		const outputs = this.replies.shift() ?? [];
		if (outputs.some((output) => 'note' in output && output.note === 'refused')) return outputs;
		const event: Event = { type: 'note-written', text: JSON.stringify(answer) };
		this.entries = [...this.entries, answeredBy(this.entries.length + 1, [event])];
		if (outputs.some((output) => 'note' in output && output.note === 'done')) this.open = null;
		else this.open = lastAsk(outputs) ?? this.open;
		return outputs;
	}

	history(): readonly Answered[] {
		return this.entries;
	}

	undoable(): number | null {
		return this.entries.findLast((entry) => !entry.void)?.entry ?? null;
	}

	wouldBe(): AmendPreview {
		return this.would ?? { refused: null, doubted: null, made: [], plan: [], stop: null, next: null };
	}

	/** What goes on elsewhere when it is agreed to. */
	rescue: (folder: string) => void = () => {
		throw new Error('This session goes on nowhere else.');
	};

	rescuePlace(): string {
		return '/media/stick';
	}

	close(): void {
		this.closed = true;
	}
}

function lastAsk(outputs: readonly Output[]): Ask | null {
	return outputs.filter((output): output is Ask => 'ask' in output).at(-1) ?? null;
}

/** A home whose jobs and sessions are given. */
export class FakeHome implements HomePort {
	readonly opened: { target: string; resume: boolean; as?: BentAs }[] = [];
	/** What the next sheet to be printed throws in place of its file's name. */
	sheetFault: Error | null = null;

	async printSheet(path: string): Promise<string> {
		if (this.sheetFault !== null) throw this.sheetFault;
		return path.replace('.json', '-sheet.pdf');
	}

	async printRecord(id: string): Promise<string> {
		if (this.sheetFault !== null) throw this.sheetFault;
		return `rail-record-${id}.pdf`;
	}

	readonly workshop = new FakeWorkshop();
	fault: Error | null = null;

	constructor(
		private readonly live: LivePort | null,
		private readonly rows: {
			jobs?: JobRow[];
			sessions?: SessionRow[];
			review?: string[];
			story?: Opened;
			benders?: string[];
			another?: LivePort;
		} = {},
	) {}

	jobs(): readonly JobRow[] {
		return this.rows.jobs ?? [];
	}

	sessions(): readonly SessionRow[] {
		return this.rows.sessions ?? [];
	}

	async openSession(target: string, resume: boolean, as?: BentAs): Promise<LivePort> {
		this.opened.push({ target, resume, ...(as && { as }) });
		if (this.fault !== null) throw this.fault;
		if (this.live === null) throw new Error('This home has no session to open.');
		return this.live;
	}

	async another(id: string): Promise<LivePort> {
		this.opened.push({ target: id, resume: false });
		if (this.fault !== null) throw this.fault;
		if (this.rows.another === undefined) throw new Error('This home has no other session to open.');
		return this.rows.another;
	}

	/** The session that is opened whatever is chosen. */
	story(id: string): Opened {
		if (this.rows.story === undefined) throw refusal(`No session ${id} is kept here.`, 2);
		return this.rows.story;
	}

	review(): readonly string[] {
		return this.rows.review ?? [];
	}

	async benders(): Promise<readonly string[]> {
		return this.rows.benders ?? [];
	}
}

/** An error of the kind that the disk's refusal is. */
export function refusal(message: string, exitCode: number): Error {
	return Object.assign(new Error(message), { exitCode });
}

/** What was answered before the screens of the tests. */
/** One line of the log that holds these events. */
export function answeredBy(entry: number, events: readonly Event[], gone = false): Answered {
	const readings = events.flatMap((event) => readingsIn([event]));
	return { entry, at: '2031-03-02T09:40:00.000Z', void: gone, events, readings };
}

export const taken = (reading: Reading): Event => ({ type: 'reading-taken', reading });

export const KEPT: readonly Answered[] = [
	answeredBy(1, [{ type: 'tube-set', bend: 2 }]),
	answeredBy(2, [taken({ of: 'loaded', value: 51.5, bend: 2 }), taken({ of: 'released', value: 47.5, bend: 2 })]),
	answeredBy(3, [taken({ of: 'angle', value: 43.7, bend: 2 })], true),
];

const TORN: readonly Fault[] = [
	{ at: 'tube.wall', found: { code: 'value', value: 'thick' }, right: { code: 'wall-at-most', most: 0.75 } },
	{
		at: 'shape.bends[1].angle',
		found: { code: 'value', value: 190 },
		right: { code: 'number', of: 'bend-angle', range: BOUNDS.bendAngle },
	},
];

/** A home with jobs, an interrupted session, finished ones, and more lines to read than a screen holds. */
export const ROWS = {
	jobs: [
		{
			path: 'jobs/aft-arch.json',
			name: 'Aft arch',
			summary: '4 bends, 1.75 x 0.12 in, 4130-normalized',
			bends: '4 bends',
			tube: '1.75 x 0.12 in',
			open: 'aft-arch-1',
		},
		{
			path: 'jobs/step.json',
			name: 'Boarding step',
			summary: '2 bends, 33.7 x 2.6 mm, 304-annealed',
			bends: '2 bends',
			tube: '33.7 x 2.6 mm',
		},
		{ path: 'jobs/torn.json', name: 'jobs/torn.json', summary: '', faults: TORN },
	],
	sessions: [
		{
			id: 'aft-arch-1',
			job: 'Aft arch',
			path: 'jobs/aft-arch.json',
			status: 'open',
			started: '2031-03-02 09:40',
			bendsDone: 1,
			bends: 4,
			fits: null,
		},
		{
			id: 'step-1',
			job: 'Boarding step',
			path: 'jobs/step.json',
			status: 'done',
			started: '2031-03-01 14:05',
			bendsDone: 2,
			bends: 2,
			fits: true,
		},
		{
			id: 'step-0',
			job: 'Boarding step',
			path: 'jobs/step.json',
			status: 'scrapped',
			started: '2031-03-01 11:20',
			bendsDone: 1,
			bends: 2,
			fits: false,
		},
	] satisfies SessionRow[],
	review: Array.from({ length: 50 }, (_, at) => `review line ${at + 1}`),
	benders: ['bay two', '  die 5.5 in'],
};
