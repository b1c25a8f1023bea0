import type { z } from 'zod';
import { invalid, Problem } from './problem.ts';

const LONGEST_JSON_BYTES = 4_000_000;
const DEEPEST_JSON = 16;

/** The JSON body as the schema has it. @throws Problem */
export async function readJson<Schema extends z.ZodType>(
	request: Request,
	schema: Schema
): Promise<z.output<Schema>> {
	const type = mediaType(request);
	if (type !== 'application/json' && !type.endsWith('+json')) {
		throw unsupported(type, 'application/json');
	}
	const text = (await readAll(request, LONGEST_JSON_BYTES, 'A JSON body')).toString('utf8');
	if (depth(text) > DEEPEST_JSON) {
		throw new Problem(400, 'Bad Request', `The body is nested deeper than ${DEEPEST_JSON} levels`);
	}
	return checked(parseJson(text, 'body'), schema);
}

/** A body that has been read, as the schema has it. @throws Problem that names the fields. */
export function checked<Schema extends z.ZodType>(body: unknown, schema: Schema): z.output<Schema> {
	const parsed = schema.safeParse(body);
	if (!parsed.success) throw invalid('body', parsed.error);
	return parsed.data;
}

/** @throws Problem when the text is not JSON. */
export function parseJson(text: string, where: string): unknown {
	try {
		return JSON.parse(text);
	} catch (cause) {
		const reason = cause instanceof Error ? cause.message : String(cause);
		throw new Problem(400, 'Bad Request', `The ${where} is not JSON: ${reason}`);
	}
}

/** The body of a CSV upload, read as it arrives. @throws Problem */
export function readCsvBody(request: Request): AsyncGenerator<Uint8Array> {
	const type = mediaType(request);
	if (!['text/csv', 'text/plain', 'application/csv', 'application/octet-stream'].includes(type)) {
		throw unsupported(type, 'text/csv');
	}
	if (!request.body) throw new Problem(400, 'Bad Request', 'The body is empty; send the CSV file');
	return chunks(request.body);
}

/**
 * Not the stream's own iterator: that one cancels when it is left early, which closes the
 * connection before the answer is through.
 */
async function* chunks(body: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
	const reader = body.getReader();
	for (;;) {
		const { done, value } = await reader.read();
		if (done) return;
		yield value;
	}
}

/** The whole body of one of these types. @throws Problem when it is another, or too long. */
export async function readBytes(
	request: Request,
	types: readonly string[],
	most: number
): Promise<Uint8Array> {
	const type = mediaType(request);
	if (!types.includes(type)) throw unsupported(type, types[0] ?? '');
	return readAll(request, most, 'The body');
}

async function readAll(request: Request, most: number, what: string): Promise<Buffer> {
	const parts: Uint8Array[] = [];
	let size = 0;
	for await (const part of request.body ? chunks(request.body) : []) {
		size += part.byteLength;
		if (size > most) {
			throw new Problem(413, 'Content Too Large', `${what} may have ${most} bytes at most`);
		}
		parts.push(part);
	}
	return Buffer.concat(parts);
}

function mediaType(request: Request): string {
	return (request.headers.get('content-type') ?? '').split(';', 1)[0]?.trim().toLowerCase() ?? '';
}

function unsupported(type: string, wanted: string): Problem {
	const got = type === '' ? 'none was given' : `it was ${type}`;
	const detail = `The content-type must be ${wanted}, but ${got}`;
	return new Problem(415, 'Unsupported Media Type', detail);
}

/** How deep brackets nest outside strings, counted before anything is built from them. */
function depth(text: string): number {
	let deepest = 0;
	let open = 0;
	for (const [token] of text.matchAll(/"(?:[^"\\]|\\.)*"|[[\]{}]/gs)) {
		if (token === '[' || token === '{') deepest = Math.max(deepest, ++open);
		else if (token === ']' || token === '}') open--;
	}
	return deepest;
}
