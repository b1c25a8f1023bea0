import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import type { WintersImport } from '#lib/server/services/tidy/import-winters.ts';
import { dryRunQuery } from '../../query.ts';
import { answer, operation } from './operation.ts';

const problem = z.object({ file: z.string(), line: z.int(), reason: z.string() });

const report = z
	.object({
		status: z.enum(['stored', 'dryRun', 'refused']),
		lakes: z.array(
			z.object({
				id: z.string().nullable(),
				name: z.string(),
				sites: z.int(),
				winters: z.int(),
				readings: z.int(),
				days: z.int(),
				isNameTaken: z.boolean()
			})
		),
		problems: z.array(problem),
		leftOut: z.array(problem)
	})
	.meta({ id: 'WintersImport' }) satisfies z.ZodType<WintersImport>;

const zip = { 'application/zip': { schema: z.string().meta({ format: 'binary' }) } };

/** Lakes as tidy winters folders. */
export function winterFolders(): ZodOpenApiPathsObject {
	return {
		'/api/v1/lakes/{lake}/winters.zip': {
			get: operation(
				'A lake as a tidy winters folder: weather by days, readings, winters',
				{ '200': { description: 'Done', content: zip } },
				{ path: z.object({ lake: z.string() }) }
			)
		},
		'/api/v1/winters': {
			post: operation(
				'Make the lakes of such a folder, all or nothing; dryRun=1 (200) stores nothing',
				{ ...answer(report, '201'), ...answer(report, '200') },
				{ query: dryRunQuery, requestBody: { required: true, content: zip } }
			)
		}
	};
}
