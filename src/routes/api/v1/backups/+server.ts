import { json } from '@sveltejs/kit';
import { listBackups, makeBackup } from '#lib/server/services/backups.ts';
import { endpoint, onlyMethods } from '../../endpoint.ts';

export const GET = endpoint(({ locals }) => json(listBackups(locals.context)));

export const POST = endpoint(async ({ locals }) =>
	json(await makeBackup(locals.context), { status: 201 })
);

export const fallback = onlyMethods('GET', 'POST');
