import { describe, expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import type { Forcing } from '#lib/model/forcing.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { runSeason } from '#lib/model/season.ts';
import { surfaceFrost_degCd } from '#lib/model/surface-frost.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';
import { weatherDay } from '../support/weather-day.ts';

const p = { ...parametersFor(INVENTED_LAKE), skyLoss_W_m2: 20, exchange_W_m2K: 20 };

const NO_WEATHER: Forcing = {
	duration_d: 1,
	freezing_degCd: 0,
	thawing_degCd: 0,
	air_degC: 0,
	warmFraction: 0,
	snowfall_kg_m2: 0,
	freshSnow_kg_m3: 100,
	rain_kg_m2: 0,
	sun_W_m2: 0
};

function darkDay(air_degC: number): Forcing {
	return { ...NO_WEATHER, air_degC, freezing_degCd: -air_degC };
}

describe('the loss to the sky', () => {
	test('counts in full in frost of a degree and more', () => {
		expect(surfaceFrost_degCd(darkDay(-1), p)).toBeCloseTo(2, 12);
		expect(surfaceFrost_degCd(darkDay(-10), p)).toBeCloseTo(11, 12);
	});

	test('shrinks with the frost towards zero and makes none of its own', () => {
		expect(surfaceFrost_degCd(darkDay(-0.2), p)).toBeCloseTo(0.4, 12);
		expect(surfaceFrost_degCd(darkDay(0), p)).toBe(0);
	});

	test('does not depend on how a day is cut', () => {
		const half = { ...darkDay(-0.4), duration_d: 0.5, freezing_degCd: 0.2 };
		expect(2 * surfaceFrost_degCd(half, p)).toBeCloseTo(surfaceFrost_degCd(darkDay(-0.4), p), 12);
	});

	test('is overcome by the sun, which counts in full near zero', () => {
		const sunny = { ...darkDay(-0.2), sun_W_m2: 1000 };
		expect(surfaceFrost_degCd(sunny, p)).toBe(0);
	});
});

/** √(2 k F/(ρ L)): bare ice whose surface is as cold as the air, check value 6 of Stefan's law. */
const STEFAN_m = 0.035569;

const LAKES: [string, LakeFacts][] = [
	['small and sheltered', { ...INVENTED_LAKE, area_km2: 0.05 }],
	['of middle size', INVENTED_LAKE],
	['large', { ...INVENTED_LAKE, area_km2: 500 }]
];

describe.each(LAKES)('a lake that is %s', (_, lake) => {
	test.each([-0.05, -0.2, -0.5, -1, -2, -5, -10, -20])(
		'grows less than Stefan allows in 30 days at a steady %d °C',
		(air_degC) => {
			const weather = Array.from({ length: 30 }, (_, index) =>
				weatherDay(addDays('2026-12-01', index), { air_degC, precipitation_kg_m2: 0 })
			);
			const days = runSeason({
				lake,
				freezeUpOn: '2026-12-01',
				until: '2026-12-31',
				weather,
				readings: []
			});
			const last = days.at(-1);
			const ice_m = last ? total_m(last.column) : NaN;
			expect(last?.on).toBe('2026-12-31');
			expect(ice_m).toBeLessThan(STEFAN_m * Math.sqrt(-air_degC * 30));
		}
	);
});
