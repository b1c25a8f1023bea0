import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { editedReading } from '#lib/server/services/reading-input.ts';
import { sentReading } from '#lib/server/services/send-readings.ts';
import { LOGGED_BY } from '#lib/ui/offline/names.ts';
import { readingsQuery, siteQuery } from '../../query.ts';
import * as answers from './answers.ts';
import { answer, body, gone, operation } from './operation.ts';

const lakePath = z.object({ lake: z.string() });
const readingPath = lakePath.extend({ id: z.string() });
const versionPath = readingPath.extend({ version: z.string() });

const loggedBy = z.object({
	[LOGGED_BY]: z
		.string()
		.optional()
		.describe(
			'Id of the person who logged it, where it waited on a device: no other’s session stores it'
		)
});

const preconditions = loggedBy.extend({
	'if-match': z.string().optional().describe('The ETag of the reading as it was seen, such as "3"')
});

const ANOTHERS = 'Somebody else logged it than who is signed in';
const OTHERWISE_STANDS =
	'The version of If-Match does not stand any more: "stands" is the one that does, and nothing is lost';

const versioned = answers.reading
	.extend({ version: z.int().min(1).describe('Counts up with each change; the ETag too') })
	.meta({ id: 'StoredReading' });

const otherVersion = z
	.object({
		id: z.int(),
		version: z.int().describe('Replaced: that it was. Else: that it was made to'),
		kind: z
			.enum(['replaced', 'aside', 'declined'])
			.describe('aside: made to an older version, and nobody has chosen yet'),
		reading: answers.reading,
		at: z.iso.datetime()
	})
	.meta({ id: 'OtherVersion' });

export function readings(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/readings': {
			get: operation('Readings by day', answer(z.array(versioned)), {
				path: lakePath,
				query: readingsQuery
			}),
			post: operation('Add one reading or several', answer(answers.readingIds, '201'), {
				path: lakePath,
				query: siteQuery,
				header: loggedBy,
				refusals: { '409': 'Its id is that of another reading', '412': ANOTHERS },
				requestBody: body(sentReading.or(z.array(sentReading)))
			})
		},
		'/api/v1/lakes/{lake}/readings/{id}': {
			get: operation('A reading', answer(versioned), { path: readingPath }),
			patch: operation(
				'Change a reading; what is absent stays. With If-Match or a version, not over a newer one',
				answer(versioned),
				{
					path: readingPath,
					header: preconditions,
					refusals: {
						'409': 'The version in the body does not stand any more: the change waits beside it',
						'412': `${OTHERWISE_STANDS}. Or: ${ANOTHERS}`
					},
					requestBody: body(editedReading)
				}
			),
			delete: operation('Delete a reading', gone(), {
				path: readingPath,
				header: preconditions,
				refusals: { '412': `${OTHERWISE_STANDS}. Or: ${ANOTHERS}` }
			})
		},
		'/api/v1/lakes/{lake}/readings/{id}/versions': {
			get: operation(
				'What a reading was before, and what was written beside it',
				answer(z.array(otherVersion)),
				{ path: readingPath }
			)
		},
		'/api/v1/lakes/{lake}/readings/{id}/versions/{version}': {
			delete: operation('Leave what stands, and ask no more about a version set aside', gone(), {
				path: versionPath
			})
		}
	};
}
