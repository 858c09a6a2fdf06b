/** What `pullbook log` is told wrong. */
export const LOG_USAGE = {
	twoForms: 'pullbook log: --json and --csv are two forms of one thing. Give one of them.',
	trend: 'pullbook log --trend takes one job or bender, and --json. For example: pullbook log --trend shop',
	narrowed: (filters: readonly string[], id: string): string =>
		`pullbook log: ${filters.join(', ')} narrow the list. Leave out "${id}", or leave out ${filters.length === 1 ? 'that' : 'those'}.`,
	twoSessions: 'pullbook log: two sessions side by side come as text or --json. For --csv give one ID.',
	fits: (given: string): string => `pullbook log: --fits takes yes or no, not "${given}". For example: --fits no`,
	since: (given: string): string =>
		`pullbook log: --since takes a day that there is, not "${given}". For example: --since 2026-10-01`,
	noRescue: (word: string): string =>
		`pullbook log ${word} is of the home alone. Leave out --rescue, or bring the session home first: pullbook bend JOB --resume --rescue DIR`,
	noCsv: (word: string): string => `pullbook log ${word} comes as text or --json. Leave out --csv.`,
	verify: (given: string): string => `pullbook log verify takes no argument, but "${given}" stands there.`,
	folder: (word: string): string => `pullbook log ${word} needs a folder: pullbook log ${word} /media/stick`,
	noFolder: (folder: string): string => `There is no folder "${folder}" to import from.`,
} as const;

/** How long many logs take to be read. */
export const READING_LOGS = {
	begins: (logs: number): string =>
		`${logs} kept sessions have to be read, which is done once and may take minutes. Ctrl-C stops; what was read by then is kept.`,
	progress: (read: number, all: number): string => `${read} of ${all} read`,
	leftOut: (logs: number): string =>
		`${logs === 1 ? 'One kept session is' : `${logs} kept sessions are`} not read yet and left out here; pullbook log reads all of them, which may take minutes, once.`,
} as const;
