import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
	.filter((file) => /\.(tsx?|md)$/.test(file))
	.map((file) => join('src', file));

/** As they are spelled in British English; the words that a job file or a tape may hold are named beside. */
const BRITISH =
	/colou?r(?<!color)|centre|millimetre|towards|neighbour|behaviour|aluminium|judgement|favour|licence|labelled|modelled|recognis|organis|grey\b|\bmetre/i;
const HELD: Readonly<Record<string, RegExp>> = {
	// What a drop is measured to, by the job file's contract.
	'src/job/check-readers.ts': /'centre'/g,
	'src/job/draft/check-questions.ts': /'centre'/g,
	'src/cli/schema/job-file.ts': /'centre'/g,
	'src/cli/schema/log-document.ts': /'centre'/g,
	'src/session/log/form/job.ts': /'centre'/g,
	'src/tube/job.ts': /'centre'/g,
	'src/tube/checks.ts': /'centre'/g,
	// What people type.
	'src/units/units.ts': /'(milli)?metres?'/g,
};

it.each([...sources, 'README.md', 'DEVELOPERS.md', 'jobs/README.md'])('%s is written in American English', (file) => {
	const text = readFileSync(join(root, file), 'utf8').replace(HELD[file] ?? /(?!)/g, '');
	expect(text.split('\n').filter((line) => BRITISH.test(line))).toEqual([]);
});
