import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { readIssuedDays } from '../storage/forecasts.ts';
import { warmerDay } from './elevation.ts';
import { getLake } from './lakes.ts';
import { daySpan, localDay } from './local-day.ts';
import { readTrust } from './trust.ts';

/** One day as one forecast told it, for holding forecasts against what came. */
export interface ForecastOfDay {
	source: string;
	issuedAt: Date;
	on: IsoDate;
	/** Days from the day of issue to the day told, 0 for the same. */
	lead_d: number;
	air_degC: number | null;
	precipitation_kg_m2: number | null;
}

/** Every kept forecast of a lake's days, the newest issue first. @throws LakeNotFound */
export async function issuedForecasts(
	ctx: Context,
	lakeId: string,
	from: IsoDate,
	to: IsoDate
): Promise<ForecastOfDay[]> {
	const { timeZone } = await getLake(ctx, lakeId);
	const { origins, latitude } = await readTrust(ctx, lakeId);
	const sources = origins.flatMap((origin) => (origin.kind === 'source' ? [origin] : []));
	const byUse = new Map(sources.map((source) => [source.lakeSourceId, source]));
	const issued = await readIssuedDays(ctx.db, [...byUse.keys()], {
		after: new Date(daySpan(addDays(from, -30), timeZone).start_s * 1000),
		by: ctx.now(),
		from,
		to
	});
	return issued.flatMap(({ lakeSourceId, issuedAt, correction_K, place_m, day }) => {
		const source = byUse.get(lakeSourceId);
		if (!source) return [];
		const { air_degC, precipitation_kg_m2 } = warmerDay(
			day,
			source.forecastCorrection_K(place_m) - correction_K,
			latitude
		);
		const lead_d = daysBetween(localDay(issuedAt, timeZone), day.on);
		return [
			{ source: source.sourceId, issuedAt, on: day.on, lead_d, air_degC, precipitation_kg_m2 }
		];
	});
}
