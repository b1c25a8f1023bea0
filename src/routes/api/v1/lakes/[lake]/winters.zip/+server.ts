import { packWinters } from '#lib/server/services/tidy/archive.ts';
import { exportWinters } from '#lib/server/services/tidy/export-winters.ts';
import { attachment } from '../../../../attachment.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const GET = endpoint(async ({ locals: { context }, params }) => {
	const lake = params['lake'] ?? '';
	const files = await exportWinters(context, lake);
	const zip = packWinters(files, context.now());
	return attachment(zip, { name: `${lake}-winters.zip`, type: 'application/zip' });
});

export const fallback = onlyMethods('GET');
