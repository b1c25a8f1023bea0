import { z } from 'zod';
import type { ZodOpenApiOperationObject, ZodOpenApiResponsesObject } from 'zod-openapi';
import { problem } from './answers.ts';

interface Request {
	path?: z.ZodObject;
	query?: z.ZodObject;
	header?: z.ZodObject;
	/** What is refused for a reason of its own, by status: problem details too. */
	refusals?: Record<`4${number}`, string>;
	requestBody?: ZodOpenApiOperationObject['requestBody'];
}

/** For what changes something as it was seen: its GET and this itself tell its ETag. */
export const asSeen = {
	header: z.object({
		'if-match': z
			.string()
			.optional()
			.describe('ETags as they were told: where none of them stands any more, nothing is changed')
	}),
	refusals: { '412': 'None of If-Match stands any more: "stands" is what does' }
} satisfies Request;

/** An operation whose failures are all problem details. */
export function operation(
	summary: string,
	responses: ZodOpenApiResponsesObject,
	{ path, query, header, requestBody, refusals = {} }: Request = {}
): ZodOpenApiOperationObject {
	const refused = Object.entries(refusals).map(([status, why]) => [status, failure(why)]);
	return {
		summary,
		requestParams: {
			...(path ? { path } : {}),
			...(query ? { query } : {}),
			...(header ? { header } : {})
		},
		...(requestBody ? { requestBody } : {}),
		responses: {
			...responses,
			...(Object.fromEntries(refused) as ZodOpenApiResponsesObject),
			default: failure('What failed, on what, and the remedy')
		}
	};
}

function failure(description: string) {
	return { description, content: { 'application/problem+json': { schema: problem } } };
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
