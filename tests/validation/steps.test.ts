import { describe, expect, test } from 'vitest';
import { total_m } from '#lib/model/column.ts';
import { runSeason, STEPS_PER_DAY } from '#lib/model/season.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { INVENTED_LAKE, seededWinter } from '../support/seeded-winter.ts';
import { hasMeasuredWinters, tidyWeather } from '../support/tidy-weather.ts';

const INVENTED: [name: string, shape: [number, number, number]][] = [
	['cold and dry', [-12, 10, 0.3]],
	['snowy, with flooding', [-7, 8, 2.5]],
	['thawing now and then', [-2, 8, 1.5]]
];

test.each(INVENTED)(
	'half the step changes a winter by less than 1 mm: %s',
	(_, [mean, swing, snow]) => {
		const shape = { seed: 7, mean_degC: mean, swing_K: swing, snow_kg_m2: snow };
		expect(changeByHalving_m(seededWinter('2026-12-01', 120, shape))).toBeLessThan(0.001);
	}
);

describe.runIf(hasMeasuredWinters)('measured winters', () => {
	test.each([
		['ntl_trout_lake_area', '1982-11-22', '1983-04-30'],
		['ntl_trout_lake_area', '1996-11-22', '1997-05-05'],
		['fi_kallavesi', '1974-12-29', '1975-05-15']
	])('half the step changes %s from %s by less than 1 mm', (dataset, from, to) => {
		expect(changeByHalving_m(tidyWeather(dataset, from, to))).toBeLessThan(0.001);
	});
});

/** Largest change of the thickness at the end of growth, when the step is halved. */
function changeByHalving_m(weather: WeatherDay[]): number {
	const coarse = thickest_m(weather, STEPS_PER_DAY);
	expect(coarse).toBeGreaterThan(0.1);
	return Math.abs(coarse - thickest_m(weather, 2 * STEPS_PER_DAY));
}

function thickest_m(weather: WeatherDay[], stepsPerDay: number): number {
	const freezeUpOn = weather[0]?.on ?? '';
	const input = { lake: INVENTED_LAKE, freezeUpOn, until: '2999-01-01', weather, stepsPerDay };
	return Math.max(...runSeason(input).map((day) => total_m(day.column)));
}
