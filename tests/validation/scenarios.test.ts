import { describe, expect, test } from 'vitest';
import { scenarios } from '#lib/model/ensemble/scenarios.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { LAKE } from '../support/invented-winter.ts';
import { hasMeasuredWinters, tidyWeather } from '../support/tidy-weather.ts';

/** The place's frost from 16 December to 15 March, drawn on 15 December by what was known then. */
function frostAhead(
	all: readonly WeatherDay[],
	year: number,
	hasPast: boolean,
	place: typeof LAKE
) {
	const asOf = `${year}-12-15`;
	const until = `${year + 1}-03-15`;
	const known = all.filter(({ on }) => on >= `${year}-10-01` && on <= asOf);
	const past = hasPast ? all.filter(({ on }) => on <= asOf) : [];
	const drawn = scenarios({ lake: place, known, past, asOf, until, count: 100, seed: year });
	return {
		drawn_degCd: drawn.map(({ days }) => frost_degCd(days)).toSorted((a, b) => a - b),
		measured_degCd: frost_degCd(all.filter(({ on }) => on > asOf && on <= until))
	};
}

function frost_degCd(days: readonly WeatherDay[]): number {
	return days.reduce((sum, { air_degC }) => sum + Math.max(0, -(air_degC ?? 0)), 0);
}

describe.runIf(hasMeasuredWinters)('measured winters as futures', () => {
	test.each([
		// Achieved with 200 futures: 0.86 and 0.84 with the past, 1.00 and 0.84 without.
		['ntl_trout_lake_area', 46.03, -89.63, 500, 1986, 1999, true],
		['ntl_trout_lake_area', 46.03, -89.63, 500, 1986, 1999, false],
		['fi_kallavesi', 62.83, 27.77, null, 1965, 1989, true],
		['fi_kallavesi', 62.83, 27.77, null, 1965, 1989, false]
	])(
		'the frost of %s at %f, %f lies in the 5 to 95 %% band about nine times in ten',
		(dataset, latitude, longitude, elevation_m, first, last, hasPast) => {
			const place = { ...LAKE, latitude, longitude, elevation_m };
			const all = tidyWeather(dataset, '1960-07-01', '2000-06-30');
			const years = Array.from({ length: last - first + 1 }, (_, i) => first + i);
			const inside = years.filter((year) => {
				const { drawn_degCd, measured_degCd } = frostAhead(all, year, hasPast, place);
				const [low = 0, high = 0] = [drawn_degCd[5], drawn_degCd[94]];
				return measured_degCd >= low && measured_degCd <= high;
			});
			// Two standard errors of the share under 0.9 for the shorter record.
			expect(inside.length / years.length).toBeGreaterThan(0.74);
		}
	);
});
