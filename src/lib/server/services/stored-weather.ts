import { daysBetween, type IsoDate, type WinterId } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { summarizeWinters } from '../storage/weather-winters.ts';
import { joinChanged } from './joining.ts';
import { getLake } from './lakes.ts';

export interface StoredWinter {
	winter: WinterId;
	/** First and last day with a temperature. */
	from: IsoDate;
	to: IsoDate;
	days: number;
	/** Days between `from` and `to` without one. */
	gapDays: number;
	/** Of the days with a temperature, those without precipitation and snowfall: their snow is unknown. */
	snowUnknownDays: number;
}

/** A lake's weather by winter, newest first. @throws LakeNotFound */
export async function storedWeather(ctx: Context, lakeId: string): Promise<StoredWinter[]> {
	await getLake(ctx, lakeId);
	await joinChanged(ctx, lakeId);
	const rows = await summarizeWinters(ctx.db, lakeId);
	return rows.map(({ winter, from, to, days, wetDays }) => ({
		winter,
		from,
		to,
		days,
		gapDays: daysBetween(from, to) + 1 - days,
		snowUnknownDays: days - wetDays
	}));
}
