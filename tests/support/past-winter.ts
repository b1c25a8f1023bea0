import { addDays, daysBetween, winterOf, type IsoDate } from '#lib/model/calendar.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import type { Story } from './story.ts';

/** The winter before this one: whole whenever the tests run, and offered by every form. */
export const PAST_WINTER = winterOf(addDays(new Date().toISOString().slice(0, 10), -365));

const year = PAST_WINTER.slice(0, 4);
const FIRST_WEATHER: IsoDate = `${year}-11-10`;
export const FROZE_OVER: IsoDate = `${year}-11-20`;
export const WEATHER_DAYS = 90;
export const LAST_WEATHER = addDays(FIRST_WEATHER, WEATHER_DAYS - 1);

/** Invented: frost that deepens and eases, and a little snow every sixth day. */
export const INVENTED_DAYS = Array.from({ length: WEATHER_DAYS }, (_, index) => ({
	on: addDays(FIRST_WEATHER, index),
	air_degC: -4 - 7 * Math.sin((Math.PI * index) / WEATHER_DAYS) + 2 * Math.cos(index),
	water_mm: index % 6 === 5 ? 1.5 : 0
}));

/** Days since the last of the weather, in the time of the lakes made here. */
export function weatherAge_d(): number {
	return daysBetween(LAST_WEATHER, new Date().toISOString().slice(0, 10));
}

export function csvOf(columns: readonly ('air' | 'water')[]): string {
	const header = ['date', ...columns.map((column) => (column === 'air' ? 'tmean_c' : 'precip_mm'))];
	const rows = INVENTED_DAYS.map(({ on, air_degC, water_mm }) =>
		[on, ...columns.map((column) => (column === 'air' ? air_degC : water_mm).toFixed(1))].join(',')
	);
	return `${[header.join(','), ...rows].join('\n')}\n`;
}

/** An invented lake of nobody's, in the middle of the North Atlantic, in UTC. */
export const INVENTED_LAKE = {
	name: 'Tarn of the Tests',
	latitude: 47.4,
	longitude: -38.2,
	area_km2: 0.8,
	meanDepth_m: 4,
	water: 'lake',
	timeZone: 'UTC'
};

/** Made over the API: the lake with its freeze-up and, unless the text is empty, its weather. */
export async function lakeWithWinter(
	{ ask }: Story,
	csv: string = csvOf(['air', 'water'])
): Promise<string> {
	const { id } = await ask<{ id: string }>('POST', '/lakes', INVENTED_LAKE);
	await ask('PUT', `/lakes/${id}/winters/${PAST_WINTER}`, { freezeUpOn: FROZE_OVER });
	if (csv !== '') await ask('POST', `/lakes/${id}/weather`, csv);
	return id;
}

/** The last day of the estimate, in whole centimetres. */
export async function lastDay_cm({ ask }: Story, id: string) {
	const { days, loads } = await ask<Forecast>('GET', `/lakes/${id}/forecast?winter=${PAST_WINTER}`);
	const last = days.at(-1);
	return {
		on: last?.on,
		fdd_degCd: last?.fdd_degCd ?? 0,
		estimate_cm: 100 * (last?.total_m.p50 ?? Number.NaN),
		lower_cm: 100 * (last?.total_m.p10 ?? Number.NaN),
		days,
		loads
	};
}
