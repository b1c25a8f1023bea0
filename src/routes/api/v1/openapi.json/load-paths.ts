import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { loadChange, loadInput } from '#lib/server/services/load-input.ts';
import { shownInput } from '#lib/server/services/shown-loads.ts';
import * as answers from './load-answers.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';

const lakePath = z.object({ lake: z.string() });
const loadPath = lakePath.extend({ id: z.string() });

/** What people bring onto a lake's ice, and which of it its pages show. */
export function loads(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/loads': {
			get: operation('Standard loads, then own ones', answer(z.array(answers.listedLoad)), {
				path: lakePath
			}),
			post: operation('Add a load of your own', answer(answers.load, '201'), {
				path: lakePath,
				requestBody: body(loadInput)
			})
		},
		'/api/v1/lakes/{lake}/loads/shown': {
			get: operation("Which loads the lake's pages show", answer(shownInput), { path: lakePath }),
			put: operation('Choose them anew; the forecast keeps all', answer(shownInput), {
				path: lakePath,
				...asSeen,
				requestBody: body(shownInput)
			})
		},
		'/api/v1/lakes/{lake}/loads/{id}': {
			get: operation('A load', answer(answers.load), { path: loadPath }),
			patch: operation('Change a load of your own; what is absent stays', answer(answers.load), {
				path: loadPath,
				...asSeen,
				requestBody: body(loadChange)
			}),
			delete: operation('Delete a load of your own', gone(), { ...asSeen, path: loadPath })
		}
	};
}
