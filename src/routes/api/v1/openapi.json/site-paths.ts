import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { positionInput } from '#lib/server/services/reading-positions.ts';
import { newSite, siteChange } from '#lib/server/services/site-input.ts';
import type { SiteRecord } from '#lib/server/services/sites.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';

const lakePath = z.object({ lake: z.string() });
const sitePath = lakePath.extend({ site: z.string() });
const readingPath = lakePath.extend({ id: z.string() });

const site = z
	.object({
		id: z.string().min(1),
		name: z.string(),
		kind: z.enum(['basin', 'bay', 'track']),
		parent: z
			.string()
			.nullable()
			.describe('Of a track: the site whose ice it was before its first work')
	})
	.meta({ id: 'Site' }) satisfies z.ZodType<SiteRecord>;

const position = z.object({ position: positionInput.nullable() }).meta({ id: 'ReadingPosition' });

/** A lake's sites, and where its readings were taken. */
export function sites(): ZodOpenApiPathsObject {
	return { ...ofLake(), ...positions() };
}

function ofLake(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/sites': {
			get: operation('Sites, main first', answer(z.array(site)), { path: lakePath }),
			post: operation('Make a site', answer(site, '201'), {
				path: lakePath,
				requestBody: body(newSite)
			})
		},
		'/api/v1/lakes/{lake}/sites/{site}': {
			get: operation('A site', answer(site), { path: sitePath }),
			patch: operation('Change a site; what is absent stays', answer(site), {
				path: sitePath,
				...asSeen,
				requestBody: body(siteChange)
			}),
			delete: operation('Delete a site; main stays, and so does what a track was made on', gone(), {
				...asSeen,
				path: sitePath
			})
		}
	};
}

function positions(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/readings/{id}/position': {
			get: operation('Where a reading was taken; null where it is not stored', answer(position), {
				path: readingPath
			}),
			put: operation('Store where a reading was taken', answer(position), {
				path: readingPath,
				...asSeen,
				requestBody: body(positionInput)
			}),
			delete: operation('Forget where a reading was taken', gone(), {
				...asSeen,
				path: readingPath
			})
		}
	};
}
