import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { BroughtFile } from './hands.ts';

/** A day that somebody's own file tells. */
export interface FileDay {
	min_degC: number;
	max_degC: number;
	water_mm: number;
}

/** A file of daily weather as people have it, up to the day before `until`. */
export function weatherFile(
	from: IsoDate,
	until: IsoDate,
	dayOf: (on: IsoDate, index: number) => FileDay
): BroughtFile {
	const rows = Array.from({ length: daysBetween(from, until) }, (_, index) => {
		const on = addDays(from, index);
		const { min_degC, max_degC, water_mm } = dayOf(on, index);
		return [on, min_degC.toFixed(1), max_degC.toFixed(1), water_mm.toFixed(1)].join(',');
	});
	return {
		name: 'our thermometer.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from(`date,tmin_c,tmax_c,precip_mm\n${rows.join('\n')}\n`)
	};
}

/** As ice is shown: rounded down. */
export function cm(thickness_m: number | null | undefined): number {
	return Math.floor(100 * (thickness_m ?? Number.NaN) + 1e-6);
}

/** As what charts ask is shown: rounded up. */
export function asked_cm(thickness_m: number | null | undefined): number {
	return Math.ceil(100 * (thickness_m ?? Number.NaN) - 1e-6);
}

/** @example dayOf('2026-12-09') // => '9 Dec' */
export function dayOf(on: IsoDate | null | undefined): string {
	if (!on) throw new Error('no day is told');
	const month = new Date(on).toLocaleString('en-GB', { month: 'short', timeZone: 'UTC' });
	return `${Number(on.slice(8))} ${month.replace('Sept', 'Sep')}`;
}
