import { json } from '@sveltejs/kit';
import type { Reading } from '#lib/model/reading.ts';
import { editReading } from '#lib/server/services/edit-reading.ts';
import { editedReading } from '#lib/server/services/reading-input.ts';
import { deleteReading } from '#lib/server/services/readings.ts';
import { findStanding } from '#lib/server/services/standing-reading.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { Problem } from '../../../../../problem.ts';
import { versionAsked } from './version-asked.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const { reading, version } = await findStanding(
		locals.context,
		params['lake'] ?? '',
		params['id'] ?? ''
	);
	return told(reading, version);
});

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const { lake = '', id = '' } = params;
	const { version: inBody = null, ...change } = await readJson(request, editedReading);
	const inHeader = versionAsked(request);
	const version = inHeader ?? inBody;
	const edited = await editReading(locals.context, lake, id, { change, version });
	if (edited.status === 'stored') return told(edited.reading, edited.version);
	const detail = `The change was made to version ${version}, and version ${edited.version} stands by now. Both are kept: what stands is here as "stands", and the change waits as version ${edited.id} among the others until somebody chooses`;
	const [status, title] = inHeader === null ? [409, 'Conflict'] : [412, 'Precondition Failed'];
	throw new Problem(status as number, title as string, detail, {
		headers: { etag: `"${edited.version}"` },
		more: { stands: { ...edited.stands, version: edited.version }, aside: edited.id }
	});
});

export const DELETE = endpoint(async ({ locals, params, request }) => {
	const { lake = '', id = '' } = params;
	const asked = versionAsked(request);
	const { reading, version } = await findStanding(locals.context, lake, id);
	if (asked !== null && asked !== version) {
		const detail = `Version ${version} stands by now, not ${asked}; nothing is deleted`;
		throw new Problem(412, 'Precondition Failed', detail, {
			headers: { etag: `"${version}"` },
			more: { stands: { ...reading, version } }
		});
	}
	await deleteReading(locals.context, lake, id);
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

function told(reading: Reading, version: number): Response {
	return json({ ...reading, version }, { headers: { etag: `"${version}"` } });
}
