import { Ajv2020 } from 'ajv/dist/2020.js';
import { DOCUMENTS, type DocumentName, schemaOf } from '../../../src/cli/schema.ts';

const ajv = new Ajv2020({ allErrors: true, strict: false, validateFormats: false });

/** What is wrong with a document by the types that its schema is made from, and by the schema as another library reads it. */
export function documentFaults(name: DocumentName, document: unknown): string[] {
	const read = DOCUMENTS[name].type.safeParse(document);
	const own = read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
	return [...own, ...schemaFaults(name, document)];
}

/** By the schema alone. */
export function schemaFaults(name: DocumentName, document: unknown): string[] {
	const validate =
		ajv.getSchema(`pullbook ${name}`) ??
		ajv.addSchema(schemaOf(name), `pullbook ${name}`).getSchema(`pullbook ${name}`)!;
	if (validate(document) === true) return [];
	return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath}: ${message}`);
}
