import { z } from 'zod';
import type { ZodOpenApiPathsObject } from 'zod-openapi';
import { answer, operation } from './operation.ts';

const backup = z
	.object({
		name: z.string(),
		reason: z
			.enum(['asked', 'schema', 'replaced'])
			.describe('Asked for; before a change of the schema; what a restored one replaced'),
		version: z.string().describe('Of its schema'),
		at: z.iso.datetime(),
		size_B: z.int()
	})
	.meta({ id: 'Backup' });

const file = { 'application/vnd.sqlite3': { schema: z.string().meta({ format: 'binary' }) } };

export function backups(): ZodOpenApiPathsObject {
	return {
		'/api/v1/backups': {
			get: operation('Backups beside the database, the newest first', answer(z.array(backup))),
			post: operation('Make one while the app is used, and check it', answer(backup, '201'))
		},
		'/api/v1/backups/{name}': {
			get: operation(
				'A backup as a file, without keys of weather sources and without webhooks',
				{ '200': { description: 'Done', content: file } },
				{ path: z.object({ name: z.string() }) }
			)
		}
	};
}
