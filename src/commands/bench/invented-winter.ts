import { addDays, dayOfYear } from '#lib/model/calendar.ts';
import type { SeasonInput } from '#lib/model/season.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

const FREEZE_UP = '2001-11-15';
const DAYS = 200;
const PERIOD_d = 365.25;
const COLDEST_DAY = 20; // of the year

/**
 * An invented lake's winter of daily weather, always the same: a yearly wave with cold and warm
 * spells about it, rain and snow on every third day or so, no day unreported.
 */
export function inventedWinter(): SeasonInput {
	return {
		lake: {
			latitude: 60,
			longitude: 25,
			elevation_m: 120,
			area_km2: 3,
			meanDepth_m: 6,
			water: 'lake'
		},
		freezeUpOn: FREEZE_UP,
		until: addDays(FREEZE_UP, DAYS),
		weather: inventedWeather()
	};
}

function inventedWeather(): WeatherDay[] {
	const draw = seededDraws(20_011_115);
	let spell_K = 0;
	return Array.from({ length: DAYS }, (_, i) => {
		const on = addDays(FREEZE_UP, i);
		spell_K = 0.8 * spell_K + 6 * (draw() - 0.5);
		const wave = Math.cos((2 * Math.PI * (dayOfYear(on) - COLDEST_DAY)) / PERIOD_d);
		const air_degC = 3 - 13 * wave + spell_K;
		const precipitation_kg_m2 = draw() < 0.35 ? 8 * draw() : 0;
		return {
			on,
			source: 'observed',
			air_degC,
			min_degC: null,
			max_degC: null,
			freezing_degCd: null,
			thawing_degCd: null,
			aboveFreezing_h: null,
			precipitation_kg_m2,
			snowfall_kg_m2: air_degC < 0.5 ? precipitation_kg_m2 : 0,
			landSnow_m: null,
			wind_m_s: null
		};
	});
}

/** Uniform draws in [0, 1) that repeat: the linear congruential generator of ANSI C's example. */
function seededDraws(seed: number): () => number {
	let state = seed;
	return () => {
		state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
		return (state >>> 8) / 0x80_0000;
	};
}
