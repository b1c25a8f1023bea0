import { expect, test } from 'vitest';
import { startOfDay_s } from '#lib/server/weather/source/lake-days.ts';
import { mapAnswer } from '#lib/server/weather/source/read/map-answer.ts';
import { sourceFiles, wave_degC } from '../../../support/weather-service.ts';

const PLACE = { timeZone: 'Europe/Oslo', from: '2025-11-01', to: '2026-04-30' };
const HOURS = 181 * 24;
const start_s = startOfDay_s(PLACE.from, PLACE.timeZone);
const at_s = Array.from({ length: HOURS }, (_, at) => start_s + at * 3600);

const inColumns = {
	hourly: {
		time: at_s,
		temperature_2m: at_s.map((_, at) => wave_degC(at % 240)),
		precipitation: at_s.map(() => 0.1),
		snowfall: at_s.map(() => 0.1),
		snow_depth: at_s.map(() => 0.2),
		wind_speed_10m: at_s.map(() => 3)
	}
};
const inRows = {
	properties: {
		timeseries: at_s.map((each, at) => ({
			time: new Date(each * 1000).toISOString(),
			data: {
				instant: { details: { air_temperature: wave_degC(at % 240), wind_speed: 3 } },
				next_1_hours: { details: { precipitation_amount: 0.1 } }
			}
		}))
	}
};

test.each([
	['columns', 'open-meteo-archive', inColumns],
	['rows', 'met-norway', inRows]
])('a winter of hours in %s is read in well under a second', async (_, id, json) => {
	const mapping = sourceFiles().get(id)?.calls[0]?.mapping;
	if (!mapping) throw new Error(`no source ${id}`);
	const start = performance.now();
	const { hours, tally } = await mapAnswer(mapping, { json, table: null }, PLACE);
	// Some 0.1 s; ten times that means that something is done once a value instead of once a column.
	expect(performance.now() - start).toBeLessThan(1500);
	// The window ends with the last of the days, one hour earlier by the clock of summer.
	expect(hours).toHaveLength(HOURS - 1);
	expect(tally.counts).toEqual([]);
});
