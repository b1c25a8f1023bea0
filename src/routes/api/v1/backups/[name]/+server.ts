import { sendBackup } from '#lib/server/services/backups.ts';
import { attachment } from '../../../attachment.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const name = params['name'] ?? '';
	const { stream, size_B } = await sendBackup(locals.context, name);
	return attachment(stream, { name, type: 'application/vnd.sqlite3', size_B });
});

export const fallback = onlyMethods('GET');
