import { z } from 'zod';
import { createDocument, type ZodOpenApiPathsObject } from 'zod-openapi';
import { winterId } from '#lib/server/services/fields.ts';
import { lakeChange, newLake } from '#lib/server/services/lakes.ts';
import { removalInput } from '#lib/server/services/removal.ts';
import { columnsInput } from '#lib/server/services/weather-csv.ts';
import { winterInput } from '#lib/server/services/winters.ts';
import { earlyIceQuery, forecastQuery, siteQuery, weatherQuery } from '../../query.ts';
import * as answers from './answers.ts';
import { earlyIce } from './early-ice-answer.ts';
import { loads } from './load-paths.ts';
import { historyOfLakes } from './history-paths.ts';
import { removal } from './leaving-answer.ts';
import { answer, asSeen, body, gone, operation } from './operation.ts';
import { places } from './place-paths.ts';
import { readings } from './reading-paths.ts';
import { sites } from './site-paths.ts';
import { backups } from './backup-paths.ts';
import { sources } from './source-paths.ts';
import { tellings } from './telling-paths.ts';
import { winterFolders } from './winters-paths.ts';

const lakePath = z.object({ lake: z.string() });
const winterPath = lakePath.extend({ winter: winterId });

/** As the address carries them; `columns` is JSON inside a parameter. */
const importParameters = z.object({
	dryRun: z.enum(['0', '1', 'false', 'true']).optional(),
	columns: z.string().optional().meta({ description: 'JSON of the schema Columns' })
});

const csv = { 'text/csv': { schema: z.string() } };

/** The API's description, from the same schemas that check what it takes. */
export function openApiDocument() {
	return createDocument({
		openapi: '3.1.0',
		info: {
			title: 'Frostledger',
			version: '1',
			description:
				'Lake-ice thickness estimated from weather and drilled readings, set against published ' +
				'load charts. A forecast, not a permission: a drilled hole decides. Lengths are metres, ' +
				"temperatures °C, days those of the lake's own calendar; null is unknown."
		},
		paths: {
			...lakes(),
			...records(),
			...loads(),
			...forecasts(),
			...tellings(),
			...places(),
			...sources(),
			...sites(),
			...backups(),
			...winterFolders(),
			...historyOfLakes()
		},
		components: { schemas: { Columns: columnsInput } }
	});
}

function lakes(): ZodOpenApiPathsObject {
	return {
		'/api/v1/health': {
			get: operation('Whether the server answers', answer(z.object({ status: z.literal('ok') })))
		},
		'/api/v1/ready': {
			get: operation(
				'Whether the database answers and its schema is up to date; 503 says why not',
				answer(z.object({ status: z.literal('ready') }))
			)
		},
		'/api/v1/lakes': {
			get: operation('All lakes', answer(z.array(answers.lake))),
			post: operation('Make a lake with one site, main', answer(answers.lake, '201'), {
				requestBody: body(newLake)
			})
		},
		'/api/v1/lakes/{lake}': {
			get: operation('A lake', answer(answers.lake), { path: lakePath }),
			patch: operation('Change a lake; what is absent stays', answer(answers.lake), {
				path: lakePath,
				...asSeen,
				requestBody: body(lakeChange)
			}),
			delete: operation('Delete a lake', gone(), { ...asSeen, path: lakePath })
		}
	};
}

function records(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/winters/{winter}': {
			get: operation('What is recorded of a winter', answer(answers.siteWinter), {
				path: winterPath,
				query: siteQuery
			}),
			put: operation('Record a winter anew', answer(answers.siteWinter), {
				path: winterPath,
				query: siteQuery,
				...asSeen,
				requestBody: body(winterInput)
			}),
			delete: operation('Take what is recorded of a winter out of use', gone(), {
				path: winterPath,
				query: siteQuery,
				...asSeen
			})
		},
		'/api/v1/lakes/{lake}/winters/{winter}/removal': {
			get: operation('By when loads have to be off', answer(removal), { path: winterPath }),
			put: operation('Set the removal date of a winter and the leads anew', answer(removal), {
				path: winterPath,
				...asSeen,
				requestBody: body(removalInput)
			})
		},
		'/api/v1/lakes/{lake}/weather': {
			get: operation('Stored days', answer(answers.weather, '200', csv), {
				path: lakePath,
				query: weatherQuery
			}),
			post: operation('Take in a CSV file, whole or not at all', answer(answers.importReport), {
				path: lakePath,
				query: importParameters,
				requestBody: { required: true, content: csv }
			})
		},
		...readings()
	};
}

function forecasts(): ZodOpenApiPathsObject {
	const parameters = { path: lakePath, query: forecastQuery };
	return {
		'/api/v1/lakes/{lake}/forecast': {
			get: operation('Ice, loads and cautions, day by day', answer(answers.forecast), parameters)
		},
		'/api/v1/lakes/{lake}/early-ice': {
			get: operation(
				'From the first cold nights to the first loads: chance of a skim, frost to go, weekend, test',
				answer(earlyIce),
				{ path: lakePath, query: earlyIceQuery }
			)
		},
		'/api/v1/lakes/{lake}/forecast.csv': {
			get: operation(
				'The days as a table',
				{ '200': { description: 'Done', content: csv } },
				parameters
			)
		}
	};
}
