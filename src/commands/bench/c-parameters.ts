import { dayOfYear } from '#lib/model/calendar.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** In the order of `struct parameters` in cover.c; the value says nothing. */
const PARAMETER_ORDER: Record<keyof Parameters, true> = {
	exchange_W_m2K: true,
	waterHeat_W_m2: true,
	snowKeptFraction: true,
	snowConductivityRatio: true,
	settledSnow_kg_m3: true,
	settling_h: true,
	settlingCold_1_K: true,
	wetting_kg_m2degCd: true,
	wetSnow_kg_m3: true,
	snowMelt_kg_m2degCd: true,
	refreezeFraction: true,
	soakedFraction: true,
	slushMatrix_kg_m3: true,
	snowSpreadFraction: true,
	flooding_d: true,
	iceMelt_m_degCd: true,
	cloudFraction: true,
	snowAlbedo: true,
	whiteAlbedo: true,
	clearAlbedo: true,
	insideFraction: true,
	belowFraction: true,
	skyLoss_W_m2: true,
	thinSnowFraction: true,
	thinSnowRatio: true,
	breakUp_m: true
};

const NAMES = Object.keys(PARAMETER_ORDER) as (keyof Parameters)[];

/** A parameter's place in `struct parameters`. */
export function placeOf(name: keyof Parameters): number {
	return NAMES.indexOf(name);
}

/** The values of `struct parameters`. */
export function parameterValues(parameters: Parameters): number[] {
	return NAMES.map((name) => parameters[name]);
}

/** The values of `struct weather`. */
export function weatherValues(day: WeatherDay): (number | null)[] {
	return [
		dayOfYear(day.on),
		Number(day.on.slice(5, 7)),
		day.air_degC,
		day.precipitation_kg_m2,
		day.snowfall_kg_m2
	];
}

/** Numbers as a C program reads them, NaN for what is not there. */
export function asText(lines: readonly (readonly (number | null)[])[]): string {
	return lines.map((line) => line.map((value) => value ?? 'nan').join(' ')).join('\n');
}

/** Lines of numbers as a C program prints them. */
export function readNumbers(text: string): number[][] {
	return text
		.trim()
		.split('\n')
		.map((line) => line.trim().split(' ').map(Number));
}
