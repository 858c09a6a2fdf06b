// Which modules lie in one file of the program. esbuild makes a file of each set of modules that the same commands load, sixty for a mark table, and
// Node takes longer to find sixty files than to read them. So a command is made to load what it would have loaded by then or soon after, whole: each
// belongs to a level, and a level has all that those before it have.
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Small files that most commands want: they lie with the entry. */
const SMALL = ['cli/page-lines.ts', 'terminal/folded.ts', 'words/sentence.ts', 'words/topics/topic-names.ts'];
/** What is loaded before a command is known: with the entry itself it would wait for its own end. */
const ALWAYS = ['cli/args.ts', 'cli/output-streams.ts', 'cli/report.ts', 'cli/run-command.ts', ...SMALL];
/** What a mark table loads: nearly all of what any command does that works on a job. */
const JOB = [...ALWAYS, 'cli/layout.ts', 'cli/tooling-lookup.ts'];
/** What reads and folds logs, which is most of a session, and the small files that most who do so want. */
const FOLDING = [
	...JOB,
	'cli/job-rows.ts',
	'cli/reading-logs.ts',
	'cli/wall-clock.ts',
	'journal/writer-parts.ts',
	'words/doubt.ts',
	'words/known.ts',
	'words/readings.ts',
	'words/session-list.ts',
];
/** A session line by line, and what tells of one. */
const TELLING = [
	...FOLDING,
	'cli/bend.ts',
	'cli/session-rows.ts',
	'review/story.ts',
	'tube/center-line.ts',
	'tube/principal-views.ts',
	'words/session-story.ts',
	'words/tape-words.ts',
	'words/view-names.ts',
];
/** The screen without Ink, and what stands behind it, in earnest and in practice. */
const SCREEN = [
	...TELLING,
	'cli/batch.ts',
	'cli/display.ts',
	'cli/review-on-screen.ts',
	'cli/session-on-screen.ts',
	'cli/workshop.ts',
	'screen/shell/open-screen.tsx',
];

/** What each of these is put with. */
const LEVELS = [
	[SMALL, ['main.ts']],
	[
		ALWAYS,
		[
			'cli/csv.ts',
			'cli/help.ts',
			'cli/man.ts',
			'cli/schema.ts',
			'review/csv-list.ts',
			'review/csv-pulls.ts',
			'words/topics/index.ts',
			'words/topics/topic-lines.ts',
		],
	],
	[JOB, ['cli/check.ts', 'cli/cut-rows.ts', 'cli/layout.ts']],
	[
		FOLDING,
		[
			'cli/bender.ts',
			'cli/completion/run.ts',
			'cli/cut.ts',
			'cli/log-compare.ts',
			'cli/notebook.ts',
			'cli/reading-logs.ts',
		],
	],
	[TELLING, ['cli/bend.ts', 'cli/log.ts', 'cli/log-trend.ts', 'cli/paper.ts', 'cli/paper-record.ts', 'paper/index.ts']],
	[
		SCREEN,
		[
			'cli/home.ts',
			'cli/practice.ts',
			'screen/benders/bench-view.ts',
			'screen/job-form/index.ts',
			'screen/review/index.ts',
			'screen/shell/ink-screen.tsx',
			'screen/shell/open-screen.tsx',
		],
	],
];

/**
 * By what is loaded by import(), below src. Nothing may be put with what imports it outright: the modules would run in another order, which a test
 * notices.
 */
const WITH = new Map(
	LEVELS.flatMap(([level, files]) => files.map((file) => [file, level.filter((own) => own !== file)])),
);

/** The same as a plugin of esbuild. */
export function together(root) {
	const src = join(root, 'src');
	return {
		name: 'together',
		setup(b) {
			b.onLoad({ filter: /[\\/]src[\\/].*\.tsx?$/ }, async ({ path }) => {
				const more = WITH.get(path.slice(src.length + 1).replaceAll('\\', '/'));
				if (more === undefined) return undefined;
				const text = await readFile(path, 'utf8');
				const imports = more.map((file) => `import ${JSON.stringify(join(src, file))};`);
				return {
					contents: [text, ...imports].join('\n'),
					loader: path.endsWith('x') ? 'tsx' : 'ts',
					resolveDir: dirname(path),
				};
			});
		},
	};
}
