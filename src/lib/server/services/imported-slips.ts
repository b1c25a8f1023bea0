import { winterOf, winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import { spikedDays, spikedHours } from '#lib/model/spiked-air.ts';
import type { Context } from '../context.ts';
import { readImportedDays, readWeatherHours } from '../storage/weather-days.ts';
import { daySpan, localDay, localMinute } from './local-day.ts';
import type { Trust } from './trust.ts';
import { WhileUnchanged } from './while-unchanged.ts';

/** Imported days or hours that are left out, as they are colder than any weather between warmer ones. */
export interface ImportedSlips {
	count: number;
	/** The lake's day of the first. */
	on: IsoDate;
	/** And its hour by the lake's clock; `null` where it is a day. */
	clock: string | null;
}

const KEPT = 200;
const HOUR_MS = 3_600_000;

const unchanged = new WhileUnchanged<{ slips: ImportedSlips | null }>(KEPT, HOUR_MS);

/** Of the winter that an instant lies in; `null` where there are none. */
export async function importedSlips(
	ctx: Context,
	{ lakeId, timeZone }: Trust,
	by: Date
): Promise<ImportedSlips | null> {
	const [from, to] = winterSpan(winterOf(localDay(by, timeZone)));
	const found = await unchanged.oneAtATime(ctx, lakeId, `${lakeId} ${from}`, async ({ keep }) => {
		const days = await readImportedDays(ctx.db, lakeId, from, to);
		const span = [daySpan(from, timeZone).start_s, daySpan(to, timeZone).end_s] as const;
		const hours = await readWeatherHours(ctx.db, lakeId, ...span);
		const slips = [
			...spikedDays(days, 'colder').map((at) => ({ on: days[at]?.on ?? from, clock: null })),
			...spikedHours(hours, 'colder').map((at) =>
				localMinute(new Date((hours[at]?.at_s ?? 0) * 1000), timeZone)
			)
		].toSorted((a, b) => (a.on < b.on ? -1 : 1));
		const [first] = slips;
		const made = { slips: first === undefined ? null : { count: slips.length, ...first } };
		keep(made);
		return made;
	});
	return found.slips;
}
