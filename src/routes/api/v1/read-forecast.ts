import type { RequestEvent } from '@sveltejs/kit';
import type { Forecast } from '#lib/model/forecast.ts';
import { DayOutsideWinter, getForecast } from '#lib/server/services/forecast.ts';
import { Problem } from '../problem.ts';
import { forecastQuery, readQuery } from '../query.ts';

/** The forecast that an address asks for. @throws Problem, LakeNotFound, SiteNotFound */
export async function readForecast({ locals, params, url }: RequestEvent): Promise<Forecast> {
	const query = readQuery(url, forecastQuery);
	return insideWinter(getForecast(locals.context, params['lake'] ?? '', query));
}

/** Says of which parameter it was that a day lies outside of its winter. @throws Problem */
export async function insideWinter<Answer>(answer: Promise<Answer>): Promise<Answer> {
	try {
		return await answer;
	} catch (cause) {
		if (!(cause instanceof DayOutsideWinter)) throw cause;
		const issues = [{ field: cause.field, message: cause.message }];
		throw new Problem(400, 'Bad Request', `${cause.field} ${cause.message}`, { issues });
	}
}
