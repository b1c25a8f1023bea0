import { forecastToCsv } from '#lib/server/services/forecast.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { readForecast } from '../../../read-forecast.ts';

export const GET = endpoint(async (event) => {
	const forecast = await readForecast(event);
	const name = `${forecast.lake}-${forecast.winter}.csv`;
	return new Response(forecastToCsv(forecast), {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': `attachment; filename="${name}"`
		}
	});
});

export const fallback = onlyMethods('GET');
