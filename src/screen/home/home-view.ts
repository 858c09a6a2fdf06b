import type { KeptBender } from '../../settings/settings.ts';
import type { BentAs } from '../../tube/job.ts';
import type { TopicName } from '../../words/topics/topic-names.ts';
import type { BenchPage } from '../benders/bench-page.ts';
import type { ShopChange } from '../benders/workshop-port.ts';
import type { Aside, JobForm } from '../job-form/job-form.ts';
import type { ListAt, ReviewPage } from '../review/review-page.ts';
import type { Opened } from '../review/review-port.ts';
import type { PageView } from '../session/pages/page.ts';
import type { Look } from '../shell/look.ts';
import type { FieldEntry, Prompt } from '../shell/prompt.ts';
import type { KeyHint } from '../text/key-line.ts';
import type { Line } from '../text/line.ts';
import type { JobRow, SessionRow } from './home-port.ts';

/** What follows from an entry outside of a session. */
export type HomeStep =
	| { step: 'page'; page: HomePage }
	| { step: 'open'; target: string; resume: boolean; as?: BentAs }
	/** The disk is looked at again, for a job that was mended outside. */
	| { step: 'again'; path: string }
	/** A kept session, to be looked at; a page of the review; a session's review as one text. */
	| { step: 'review'; id: string }
	| { step: 'read'; id: string }
	| { step: 'reviewed'; at: ReviewPage }
	| { step: 'leave' }
	/** A form for a new job, for a kept one, or for a copy of one. */
	| { step: 'form'; path: string | null; copy: boolean }
	| { step: 'formShown'; form: JobForm }
	| { step: 'formAnswer'; text: string }
	| { step: 'formBack' }
	| { step: 'formAside'; aside: Aside }
	/** Writes the job, under a path or under a file's name in the folder of jobs. */
	| { step: 'formSave'; form: JobForm; to: { path: string } | { file: string }; over: boolean }
	/** A page of the benders, as they are kept now. */
	| { step: 'bench'; at: BenchPage }
	/** Keeps a change of a bender or die, then shows that page. */
	| { step: 'shop'; change: ShopChange; next: BenchPage; said: string }
	/** The job's shop sheet, as a PDF beside it; of a sample in the folder that the program was started in. */
	| { step: 'paper'; path: string; sample: boolean }
	/** A kept session's record, as a PDF beside its job. */
	| { step: 'record'; id: string }
	/** A topic of help, to be read. */
	| { step: 'topic'; name: TopicName }
	/** What the benders and dies have learned, to be read. */
	| { step: 'learned' };

/** The sessions that are kept, and what is searched among them. */
export interface KeptSessions {
	sessions: readonly SessionRow[];
	search: string;
}

/** A page outside of a session. */
export interface HomeView {
	title: string;
	where?: readonly string[];
	prompt: Prompt<HomeStep>;
	body: PageView['body'];
	picture?: (look: Look) => (columns: number, rows: number) => Line[];
	keys?: readonly KeyHint[];
	/** What such a key leads to while nothing is typed. */
	shortcuts?: Readonly<Record<string, HomeStep>>;
	/** The same of keys that move: arrows by their names, and those of the pad in their places. */
	moves?: Readonly<Record<string, HomeStep>>;
}

/** Which page is open outside of a session. Pages that are loaded only when they are wanted bring what draws them. */
export type HomePage =
	| { page: 'home' }
	/** A job that was interrupted, when the program was started for it alone. */
	| { page: 'offer'; job: JobRow }
	/** What can be done with the job of that path. */
	| { page: 'job'; path: string }
	| {
			page: 'review';
			at: ReviewPage;
			/** The session that is looked at, and the list that it was chosen from. */
			opened: Opened | null;
			list?: ListAt;
			view: (kept: KeptSessions, at: ReviewPage, opened: Opened | null, list?: ListAt) => HomeView;
	  }
	| { page: 'help' | 'more'; from: HomePage }
	| { page: 'form'; form: JobForm; view: (form: JobForm, entry: FieldEntry) => HomeView }
	| {
			page: 'bench';
			at: BenchPage;
			benders: readonly KeptBender[];
			view: (at: BenchPage, benders: readonly KeptBender[]) => HomeView;
	  };
