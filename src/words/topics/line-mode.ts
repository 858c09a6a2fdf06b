import { EXAMPLE_SESSION } from './example-session.ts';
import { ASK_FIELDS, NOTE_FIELDS } from './line-fields.ts';
import { ADVICE, ANSWERS, ASKS, CHECKS, EVIDENCE_LINES, NOTES, READING_LINES, WARNINGS } from './line-words.ts';
import { REASON_SECTIONS } from './reason-codes.ts';
import type { Row, Topic, TopicSection } from './topic.ts';

const tableRows = (table: Readonly<Record<string, string>>): Row[] => Object.entries(table);

/** A section for each ask or note. */
function fieldSections(
	kind: string,
	fields: Readonly<Record<string, Readonly<Record<string, string>>>>,
): TopicSection[] {
	return Object.entries(fields).map(([name, rows]) => ({ heading: `${kind} ${name}`, rows: tableRows(rows) }));
}

export const lineMode: Topic = {
	examples: [
		['pullbook bend JOB --lines', 'start a session over standard input and output'],
		['pullbook bend JOB --lines --resume', 'go on at the question that was open'],
	],
	sections: [
		{
			heading: 'A session',
			text: ['Lines with "ask" or "note" come from the program. The others are your answers.'],
			shown: EXAMPLE_SESSION,
		},
		{
			heading: 'The rules',
			text: [
				'A line with "ask" wants one answer line. A line with "note" wants none.',
				'Any line after your answer, but "refused", means the answer is on disk. After "refused" nothing was kept and the same ask follows.',
				'Lengths are in the job\'s units, angles in degrees. You may write a number as a text: "31 1/2", "362 mm".',
				'One answer holds one action. A "note" with a text of yours may ride with it, or stand alone.',
				'"sd" is a give or take: pullbook help method says how much that is.',
				'The end of input leaves the session with exit code 3, as {"quit":true} does.',
			],
		},
		{ heading: 'Asks', rows: tableRows(ASKS) },
		{ heading: 'Notes', rows: tableRows(NOTES) },
		{ heading: 'Answers', rows: tableRows(ANSWERS) },
		{ heading: 'Kinds of evidence', rows: tableRows(EVIDENCE_LINES) },
		{ heading: 'Kinds of reading', rows: tableRows(READING_LINES) },
		{ heading: 'Kinds of check', rows: tableRows(CHECKS) },
		{ heading: 'Advice', rows: tableRows(ADVICE) },
		{ heading: 'Warnings', rows: tableRows(WARNINGS) },
		...fieldSections('Fields of ask', ASK_FIELDS),
		...fieldSections('Fields of note', NOTE_FIELDS),
		{
			heading: 'Reasons',
			text: [
				'A line with "why" also has "reason": a list of {"code":"…"} with the numbers behind it, by name. "why" is made from it. The codes are:',
			],
		},
		...REASON_SECTIONS,
	],
};
