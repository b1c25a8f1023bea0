import { json } from '@sveltejs/kit';
import { importWeather } from '#lib/server/services/import-weather.ts';
import { listWeather, weatherToCsv } from '#lib/server/services/weather-csv.ts';
import { readCsvBody } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { Problem } from '../../../../problem.ts';
import { importQuery, readQuery, weatherQuery } from '../../../../query.ts';

/** JSON, or CSV where the client asks for that. */
export const GET = endpoint(async ({ locals, params, request, url }) => {
	const { from, to } = readQuery(url, weatherQuery);
	const days = await listWeather(locals.context, params['lake'] ?? '', from, to);
	if (request.headers.get('accept')?.startsWith('text/csv')) {
		return new Response(weatherToCsv(days), {
			headers: { 'content-type': 'text/csv; charset=utf-8', vary: 'accept' }
		});
	}
	const span = { from: days.at(0)?.on ?? null, to: days.at(-1)?.on ?? null };
	return json({ ...span, days }, { headers: { vary: 'accept' } });
});

export const POST = endpoint(async ({ locals, params, request, url }) => {
	const { dryRun, columns } = readQuery(url, importQuery);
	const { status, ...report } = await importWeather(
		locals.context,
		params['lake'] ?? '',
		readCsvBody(request),
		{ dryRun: dryRun === '1' || dryRun === 'true', ...(columns ? { columns } : {}) }
	);
	if (status !== 'refused') return json(report);
	const issues = report.rejected.map(({ line, reason }) => ({
		field: `line ${line}`,
		message: reason
	}));
	const detail = issues[0] ? `${issues[0].field}: ${issues[0].message}` : 'it has no rows';
	throw new Problem(400, 'Bad Request', `The file cannot be read; ${detail}`, { issues });
});

export const fallback = onlyMethods('GET', 'POST');
