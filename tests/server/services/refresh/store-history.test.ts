import { expect, test } from 'vitest';
import type { WeatherHour } from '../../../../src/lib/model/hours-to-days.ts';
import { joinChanged } from '../../../../src/lib/server/services/joining.ts';
import { storeHistory } from '../../../../src/lib/server/services/refresh/store-history.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { readSourceHours } from '../../../../src/lib/server/storage/source-weather.ts';
import type { SourceAnswer } from '../../../../src/lib/server/weather/source/contract.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import { askingOf, hoursFrom, useSource } from '../../../support/invented-source.ts';
import { weatherDay } from '../../../support/weather-day.ts';

const SPAN = { from: '2027-01-03', to: '2027-01-04' };

/** A lake on UTC with one source that maps temperature and precipitation. */
async function lake() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	const store = async (answer: Partial<Pick<SourceAnswer, 'hours' | 'days'>>) => {
		await storeHistory(ctx.db, await askingOf(ctx), { hours: [], days: [], ...answer }, SPAN);
		await joinChanged(ctx, id);
	};
	return { ctx, id, store };
}

/** Two days about one temperature, as a station tells it that does not stick. */
function twoDays(changes: (hour: WeatherHour, at: number) => Partial<WeatherHour> = () => ({})) {
	const air = Array.from({ length: 48 }, (_, at) => -10 + (at % 2));
	const hours = hoursFrom('2027-01-03T00:00:00Z', air, { precipitation_kg_m2: 0.5, wind_m_s: 3 });
	return hours.map((hour, at) => ({ ...hour, ...changes(hour, at) }));
}

test('a temperature that is withdrawn later goes, and its day with it', async () => {
	const { ctx, id, store } = await lake();
	await store({ hours: twoDays() });
	expect((await listWeather(ctx, id)).map((day) => day.air_degC)).toEqual([-9.5, -9.5]);
	await store({ hours: twoDays((_, at) => (at > 23 && at < 40 ? { air_degC: null } : {})) });
	expect((await listWeather(ctx, id)).map((day) => day.air_degC)).toEqual([-9.5, null]);
});

test('what is not asked for stays, and so do the hours in which the answer begins and ends', async () => {
	const { ctx, store } = await lake();
	await store({ hours: twoDays() });
	const nothing = { air_degC: null, precipitation_kg_m2: null, wind_m_s: null };
	await store({ hours: twoDays(() => nothing) });
	const from_s = Date.parse(SPAN.from) / 1000;
	const read = await readSourceHours(ctx.db, 'source_hour', [1], from_s, from_s + 2 * 86_400);
	const hours = read.get(1) ?? [];
	expect(hours).toHaveLength(48);
	expect(hours.every(({ wind_m_s }) => wind_m_s === 3)).toBe(true);
	const kept = hours.flatMap(({ air_degC }, at) => (air_degC === null ? [] : [at]));
	expect(kept).toEqual([0, 47]);
	expect(hours[20]?.precipitation_kg_m2).toBeNull();
});

test('a value of a day that is withdrawn goes', async () => {
	const { ctx, id, store } = await lake();
	const day = (air_degC: number | null, precipitation_kg_m2: number | null) => {
		const { source: _, ...values } = weatherDay('2027-01-03', { air_degC, precipitation_kg_m2 });
		return [{ ...values, landSnow_m: air_degC === null ? null : 0.1 }];
	};
	await store({ days: day(-12, 2) });
	await store({ days: day(null, null) });
	const [joined] = await listWeather(ctx, id);
	expect(joined).toMatchObject({ air_degC: null, precipitation_kg_m2: null, landSnow_m: 0.1 });
});
