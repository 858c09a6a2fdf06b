import * as z from 'zod/mini';
import { DOCUMENT_WORDS } from '../words/commands/index.ts';
import { noSchemaWords, programWords } from '../words/usage/command-line.ts';
import { type Io, printJson } from './io.ts';
import { jobFile } from './schema/job-file.ts';
import { layoutDocument } from './schema/layout-document.ts';
import { logDocument } from './schema/log-document.ts';
import { UsageError } from './usage-error.ts';

/** The documents that have a schema: what checks them. A program's own documents may gain fields; a job file has no others. */
export const DOCUMENTS = {
	log: { type: logDocument, isOpen: true },
	layout: { type: layoutDocument, isOpen: true },
	job: { type: jobFile, isOpen: false },
} as const;
export type DocumentName = keyof typeof DOCUMENTS;

const isDocument = (name: string): name is DocumentName => Object.hasOwn(DOCUMENTS, name);

/** The JSON Schema (draft 2020-12) of a document. */
export function schemaOf(name: DocumentName): object {
	const { type, isOpen } = DOCUMENTS[name];
	const { $schema, ...schema } = z.toJSONSchema(type, {
		override: ({ jsonSchema }) => {
			// A later version may print more: whoever checks by this one must not refuse it.
			if (isOpen && jsonSchema.additionalProperties === false) delete jsonSchema.additionalProperties;
		},
	});
	return { $schema, title: programWords(name), description: DOCUMENT_WORDS[name], ...schema };
}

/** `pullbook schema`: prints the JSON Schema of a document. @throws UsageError where there is no such document */
export function runSchema(name: string, io: Pick<Io, 'stdout'>): number {
	if (!isDocument(name)) throw new UsageError(noSchemaWords(name, Object.keys(DOCUMENTS)));
	printJson(io, schemaOf(name));
	return 0;
}
