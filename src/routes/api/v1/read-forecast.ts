import type { RequestEvent } from '@sveltejs/kit';
import type { Forecast } from '#lib/model/forecast.ts';
import { DayOutsideWinter, getForecast } from '#lib/server/services/forecast.ts';
import { Problem } from '../problem.ts';
import { forecastQuery, readQuery } from '../query.ts';

/** The forecast that an address asks for. @throws Problem, LakeNotFound, SiteNotFound */
export async function readForecast({ locals, params, url }: RequestEvent): Promise<Forecast> {
	const query = readQuery(url, forecastQuery);
	try {
		return await getForecast(locals.context, params['lake'] ?? '', query);
	} catch (cause) {
		if (!(cause instanceof DayOutsideWinter)) throw cause;
		const issues = [{ field: cause.field, message: cause.message }];
		throw new Problem(400, 'Bad Request', `${cause.field} ${cause.message}`, { issues });
	}
}
