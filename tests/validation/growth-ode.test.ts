import { describe, expect, test } from 'vitest';
import type { IsoDate } from '#lib/model/calendar.ts';
import { parametersFor, type Parameters } from '#lib/model/parameters.ts';
import type { Reading } from '#lib/model/reading.ts';
import { runSeason } from '#lib/model/season.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { INVENTED_LAKE, seededWinter } from '../support/seeded-winter.ts';
import { hasMeasuredWinters, tidyWeather } from '../support/tidy-weather.ts';
import { integrate } from './ode.ts';

const FREEZE_UP = '2026-12-01';
const WHITE_m = 0.06;

/** Growth alone: no sun, and so little snow kept that nothing floods. */
const GROWING: Parameters = {
	...parametersFor(INVENTED_LAKE),
	cloudFraction: 0,
	snowSpreadFraction: 0,
	waterHeat_W_m2: 2
};

const INVENTED: [name: string, weather: WeatherDay[]][] = [
	['steady frost', shaped(1, -10, 2, 0.12)],
	['swinging frost', shaped(2, -13, 12, 0.1)],
	['light frost', shaped(3, -3, 2.5, 0.03)]
];

test.each(INVENTED)(
	'growth over a winter of %s agrees with an ODE solver to 1 mm',
	(_, weather) => {
		expectAgreement(weather, GROWING);
	}
);

describe.runIf(hasMeasuredWinters)('measured winters', () => {
	const MEASURED: [dataset: string, from: IsoDate, to: IsoDate][] = [
		['ntl_trout_lake_area', '1981-12-09', '1982-03-31'],
		['ntl_trout_lake_area', '1995-11-15', '1996-03-31'],
		['fi_kallavesi', '1965-11-22', '1966-03-31']
	];
	test.each(MEASURED)('the frost and snow of %s from %s agree to 1 mm', (dataset, from, to) => {
		const lightly = { ...GROWING, snowKeptFraction: 0.1 };
		expectAgreement(tidyWeather(dataset, from, to).map(frostAlone), lightly);
	});
});

function expectAgreement(weather: WeatherDay[], parameters: Parameters): void {
	const days = runSeason({
		lake: INVENTED_LAKE,
		freezeUpOn: weather[0]?.on ?? '',
		until: '2999-01-01',
		weather,
		readings: [whiteIceAt(weather[0]?.on ?? '')],
		parameters
	});
	const reference = integrate({
		exchange: parameters.exchange_W_m2K,
		waterHeat: parameters.waterHeat_W_m2,
		skyLoss: parameters.skyLoss_W_m2,
		thinFraction: parameters.thinSnowFraction,
		thinRatio: parameters.thinSnowRatio,
		snowRatio: parameters.snowConductivityRatio,
		settledDensity: parameters.settledSnow_kg_m3,
		settling_h: parameters.settling_h,
		settlingCold: parameters.settlingCold_1_K,
		white: WHITE_m,
		air: days.slice(0, -1).map((day) => day.air_degC ?? NaN),
		snowfall: weather.map((day) => (day.snowfall_kg_m2 ?? NaN) * parameters.snowKeptFraction)
	});
	const clear_m = days.slice(1).map((day) => day.column.clear_m);
	expect(days.at(-1)?.column.white_m).toBeCloseTo(WHITE_m, 9);
	expect(reference.at(-1)).toBeGreaterThan(0.15);
	const errors_m = clear_m.map((value, i) => Math.abs(value - (reference[i] ?? NaN)));
	expect(Math.max(...errors_m)).toBeLessThan(0.001);
}

function shaped(seed: number, mean_degC: number, swing_K: number, snow_kg_m2: number) {
	return seededWinter(FREEZE_UP, 110, { seed, mean_degC, swing_K, snow_kg_m2 }).map(frostAlone);
}

/** The frost of a day's mean and its snow, without a thaw or rain. */
function frostAlone(day: WeatherDay): WeatherDay {
	const air_degC = Math.min(0, day.air_degC ?? 0);
	return {
		...day,
		air_degC,
		freezing_degCd: -air_degC,
		thawing_degCd: 0,
		aboveFreezing_h: 0,
		precipitation_kg_m2: day.snowfall_kg_m2
	};
}

function whiteIceAt(on: IsoDate): Reading {
	const hole = { clear_m: 0, white_m: WHITE_m, snow_m: 0, slush_m: 0 };
	return {
		id: 'white',
		on,
		place: null,
		kind: 'measured',
		holes: [{ ...hole, total_m: null, freeboard_m: null }],
		core: null,
		by: null,
		secondHand: false,
		remark: null
	};
}
