import { addDays } from '#lib/model/calendar.ts';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import { UNKNOWN_DAY } from '#lib/model/weather.ts';
import { compareDays, LARGE_K } from '#lib/model/weather-doubt.ts';
import type { Context } from '../../context.ts';
import { issuedForecasts, type ForecastOfDay } from '../issued-forecasts.ts';
import { joinDays } from '../joining.ts';
import { localDay } from '../local-day.ts';
import type { Trust } from '../trust.ts';
import { WhileUnchanged } from '../while-unchanged.ts';

/** A source whose forecasts were far colder than the days that came. */
export interface ColdForecast {
	sourceId: string;
	/** How much colder in the mean, the day before. */
	colder_K: number;
	days: number;
}

/** So far back forecasts are held against what came. Our choice: two weeks are of one season. */
const LOOK_BACK_D = 14;
const KEPT = 200;
const HOUR_MS = 3_600_000;

const unchanged = new WhileUnchanged<ColdForecast[]>(KEPT, HOUR_MS);

/** Those that make ice ahead that has not come of late, by an instant. */
export function coldForecasts(ctx: Context, trust: Trust, by: Date): Promise<ColdForecast[]> {
	const today = localDay(by, trust.timeZone);
	const key = `${trust.lakeId} ${today}`;
	return unchanged.oneAtATime(ctx, trust.lakeId, key, async ({ keep }) => {
		const [from, to] = [addDays(today, -LOOK_BACK_D), addDays(today, -1)];
		const told = (await issuedForecasts(ctx, trust.lakeId, from, to)).filter(
			({ lead_d }) => lead_d === 1
		);
		const came = told.length > 0 ? await joinDays(ctx.db, trust, from, to) : [];
		const sources = [...new Set(told.map(({ source }) => source))];
		const found = sources.flatMap((source) => {
			const days = newestOf(told.filter((each) => each.source === source));
			const compared = compareDays(days, came);
			return compared && compared.bias_K < -LARGE_K
				? [{ sourceId: source, colder_K: -compared.bias_K, days: compared.days }]
				: [];
		});
		keep(found);
		return found;
	});
}

/** Each day once; the newest issue comes first. */
function newestOf(told: readonly ForecastOfDay[]): DayValues[] {
	const days = new Map<string, DayValues>();
	for (const { on, air_degC } of told)
		if (!days.has(on)) days.set(on, { ...UNKNOWN_DAY, on, air_degC });
	return [...days.values()];
}
