import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { newSource, sourceChange, weatherSource } from '#lib/server/services/sources/input.ts';
import { lakeOrderInput } from '#lib/server/services/sources/lake-order.ts';
import { tryInput } from '#lib/server/services/sources/try-call.ts';
import { logQuery } from '../../query.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';
import * as answers from './source-answers.ts';

const lakePath = z.object({ lake: z.string() });
const sourcePath = z.object({ id: z.string() });

/** Weather sources, and how they keep a lake's weather up to date. */
export function sources(): ZodOpenApiPathsObject {
	return { ...configured(), ...looked(), ...ofLakes() };
}

function configured(): ZodOpenApiPathsObject {
	return {
		'/api/v1/sources': {
			get: operation('All weather sources', answer(z.array(answers.source))),
			post: operation('Add a source, or take in an exported one', answer(answers.source, '201'), {
				requestBody: body(newSource.or(weatherSource))
			})
		},
		'/api/v1/sources/{id}': {
			get: operation('A source, without its key', answer(answers.source), { path: sourcePath }),
			patch: operation(
				'Change a source; the key is forgotten when its address moves to another host',
				answer(answers.source),
				{ ...asSeen, path: sourcePath, requestBody: body(sourceChange) }
			),
			delete: operation('Delete a source; imported files stay', gone(), {
				...asSeen,
				path: sourcePath
			})
		},
		'/api/v1/sources/{id}/restore': {
			post: operation(
				'Take a deletion back, with what the source had brought',
				answer(answers.source),
				{ path: sourcePath }
			)
		},
		'/api/v1/sources/{id}/export': {
			get: operation('The source as JSON to pass on', answer(weatherSource), { path: sourcePath })
		}
	};
}

function looked(): ZodOpenApiPathsObject {
	return {
		'/api/v1/sources/ready-made': {
			get: operation('Sources that come with the app', answer(z.array(weatherSource)))
		},
		'/api/v1/sources/try': {
			post: operation('Ask an address once, and store nothing', answer(answers.tried), {
				requestBody: body(tryInput)
			})
		},
		'/api/v1/sources/log': {
			get: operation('What was asked and how it went', answer(z.array(answers.logEntry)), {
				query: logQuery
			})
		}
	};
}

function ofLakes(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/sources': {
			get: operation('Where the weather comes from', answer(answers.lakeOrder), {
				path: lakePath
			}),
			put: operation('Choose sources and their order of trust', answer(answers.lakeOrder), {
				path: lakePath,
				...asSeen,
				requestBody: body(lakeOrderInput)
			})
		},
		'/api/v1/lakes/{lake}/refresh/earlier-winters': {
			post: operation(
				'Ask the sources for earlier winters with a freeze-up on record, within their daily limits',
				answer(answers.refreshState, '202'),
				{ path: lakePath }
			)
		},
		'/api/v1/lakes/{lake}/refresh': {
			get: operation('How the refreshing goes', answer(answers.refreshState), { path: lakePath }),
			post: operation(
				'Ask the sources now, as far as their limits allow',
				answer(answers.refreshState, '202'),
				{ path: lakePath }
			)
		}
	};
}
