import { expect, test } from 'vitest';
import { withoutRunningDay } from '../../../src/lib/server/services/running-day.ts';
import { UNKNOWN_DAY, type WeatherDay } from '../../../src/lib/model/weather.ts';

const LAKE = { timeZone: 'Etc/UTC', today: null };

/** A day that was built from its hours. */
const ofHours = (on: string, aboveFreezing_h: number): WeatherDay => ({
	on,
	source: 'observed',
	air_degC: -12,
	min_degC: -15,
	max_degC: 3,
	freezing_degCd: 12,
	thawing_degCd: 0.2,
	aboveFreezing_h,
	precipitation_kg_m2: 4,
	snowfall_kg_m2: 4,
	landSnow_m: 0.3,
	wind_m_s: 5
});

const at = (instant: string, ...days: WeatherDay[]) =>
	withoutRunningDay({ now: () => new Date(instant) }, LAKE, days);

test('of a day that runs the warm hours stay, its snow on land and wind, and nothing that is summed up', () => {
	const [whole, running] = [ofHours('2027-01-19', 4), ofHours('2027-01-20', 4)];
	expect(at('2027-01-20T21:00:00Z', whole, running)).toEqual([
		whole,
		{
			...UNKNOWN_DAY,
			on: '2027-01-20',
			source: 'observed',
			aboveFreezing_h: 4,
			landSnow_m: 0.3,
			wind_m_s: 5
		}
	]);
	// That no hour of it is warm is not known yet.
	expect(at('2027-01-20T21:00:00Z', ofHours('2027-01-20', 0))[0]?.aboveFreezing_h).toBeNull();
	expect(at('2027-01-21T00:00:00Z', running)).toEqual([running]);
});

test('a daily record of today stands: it comes when its day is measured', () => {
	const record = { ...ofHours('2027-01-20', 0), freezing_degCd: null, aboveFreezing_h: null };
	expect(at('2027-01-20T21:00:00Z', record)).toEqual([record]);
});
