import type { z } from 'zod';
import type { ZodOpenApiOperationObject, ZodOpenApiResponsesObject } from 'zod-openapi';
import { problem } from './answers.ts';

interface Request {
	path?: z.ZodObject;
	query?: z.ZodObject;
	requestBody?: ZodOpenApiOperationObject['requestBody'];
}

/** An operation whose failures are all problem details. */
export function operation(
	summary: string,
	responses: ZodOpenApiResponsesObject,
	{ path, query, requestBody }: Request = {}
): ZodOpenApiOperationObject {
	const failure = {
		description: 'What failed, on what, and the remedy',
		content: { 'application/problem+json': { schema: problem } }
	};
	return {
		summary,
		requestParams: { ...(path ? { path } : {}), ...(query ? { query } : {}) },
		...(requestBody ? { requestBody } : {}),
		responses: { ...responses, default: failure }
	};
}

export function body(schema: z.ZodType) {
	return { required: true, content: { 'application/json': { schema } } };
}

export function answer(
	schema: z.ZodType,
	status: '200' | '201' | '202' = '200',
	more: object = {}
) {
	const content = { 'application/json': { schema }, ...more };
	return { [status]: { description: 'Done', content } };
}

export function gone(): ZodOpenApiResponsesObject {
	return { '204': { description: 'Deleted' } };
}
