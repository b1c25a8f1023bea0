import { json } from '@sveltejs/kit';
import { z } from 'zod';
import { readingVersions } from '#lib/server/services/edit-reading.ts';
import { listReadings } from '#lib/server/services/readings.ts';
import { sendReadings, sentReading } from '#lib/server/services/send-readings.ts';
import { checked, readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { readingsQuery, readQuery, siteQuery } from '../../../../query.ts';

const severalReadings = z.array(sentReading).max(5000);

export const GET = endpoint(async ({ locals, params, url }) => {
	const { site, winter } = readQuery(url, readingsQuery);
	const { lake = '' } = params;
	const readings = await listReadings(locals.context, lake, site, winter);
	const versionOf = await readingVersions(locals.context, lake);
	return json(readings.map((reading) => ({ ...reading, version: versionOf(reading.id) })));
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	const { site } = readQuery(url, siteQuery);
	const body = await readJson(request, z.unknown());
	// Not a union of the two: its complaint would not name the field.
	const list = Array.isArray(body) ? checked(body, severalReadings) : [checked(body, sentReading)];
	const ids = await sendReadings(locals.context, params['lake'] ?? '', site, list);
	return json({ ids }, { status: 201 });
});

export const fallback = onlyMethods('GET', 'POST');
