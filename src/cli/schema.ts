import * as z from 'zod/mini';
import { type Io, printJson } from './io.ts';
import { jobFile } from './schema/job-file.ts';
import { layoutDocument } from './schema/layout-document.ts';
import { logDocument } from './schema/log-document.ts';
import { UsageError } from './usage-error.ts';

/** The documents that have a schema: what checks them, and what they are. A program's own documents may gain fields; a job file has no others. */
export const DOCUMENTS = {
	log: { type: logDocument, says: 'What pullbook log ID --json prints.', isOpen: true },
	layout: { type: layoutDocument, says: 'What pullbook layout JOB --json prints.', isOpen: true },
	job: { type: jobFile, says: 'A job file, version 1.', isOpen: false },
} as const;
export type DocumentName = keyof typeof DOCUMENTS;

const isDocument = (name: string): name is DocumentName => Object.hasOwn(DOCUMENTS, name);

/** The JSON Schema (draft 2020-12) of a document. */
export function schemaOf(name: DocumentName): object {
	const { type, says, isOpen } = DOCUMENTS[name];
	const { $schema, ...schema } = z.toJSONSchema(type, {
		override: ({ jsonSchema }) => {
			// A later version may print more: whoever checks by this one must not refuse it.
			if (isOpen && jsonSchema.additionalProperties === false) delete jsonSchema.additionalProperties;
		},
	});
	return { $schema, title: `pullbook ${name}`, description: says, ...schema };
}

/** `pullbook schema`: prints the JSON Schema of a document. @throws UsageError where there is no such document */
export function runSchema(name: string, io: Pick<Io, 'stdout'>): number {
	if (!isDocument(name)) {
		const names = Object.keys(DOCUMENTS).join(', ');
		throw new UsageError(`There is no schema "${name}". There are ${names}. For example: pullbook schema log`);
	}
	printJson(io, schemaOf(name));
	return 0;
}
