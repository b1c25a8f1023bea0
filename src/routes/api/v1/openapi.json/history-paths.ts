import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { historyQuery } from '../../query.ts';
import { answer, operation } from './operation.ts';

const cells = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));

const page = z
	.object({
		entries: z.array(
			z.object({
				unit: z.int().meta({ description: 'Grows with time' }),
				at: z.iso.datetime(),
				who: z.string(),
				changes: z.array(
					z.object({
						what: z.string(),
						key: cells,
						before: cells.nullable(),
						after: cells.nullable()
					})
				),
				undo: z
					.object({ what: z.string(), id: z.string(), site: z.string().nullable() })
					.nullable()
					.meta({ description: 'A deletion in it that can be taken back' })
			})
		),
		older: z.int().nullable().meta({ description: 'Goes into before= for older ones' })
	})
	.meta({ id: 'History' });

/** Who changed what. */
export function historyOfLakes(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/history': {
			get: operation('Who changed what of a lake, the newest first', answer(page), {
				path: z.object({ lake: z.string() }),
				query: historyQuery
			})
		}
	};
}
