import { daysBetween } from '#lib/model/calendar.ts';
import type { EstimatedDay } from '#lib/model/ensemble/estimate.ts';
import type { EnsembleInput } from '#lib/model/ensemble/run.ts';
import { UNCERTAIN } from '#lib/model/ensemble/uncertain.ts';
import { holeMeans } from '#lib/model/hole-layers.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { asText, parameterValues, placeOf, readNumbers, weatherValues } from './c-parameters.ts';

/** What time-ensemble.c reads; `runs` is how often it runs and times the ensemble. */
export function ensembleText(input: EnsembleInput, runs: number): string {
	const { lake, weather, members, seed, readings, freezeUpOn } = input;
	const { latitude, elevation_m } = lake;
	return asText([
		[weather.length, latitude, elevation_m ?? 0, members, seed, readings.length, runs],
		parameterValues(input.parameters ?? parametersFor(lake)),
		...UNCERTAIN.map(({ name, scale, site, winter }) => [
			placeOf(name),
			scale === 'share' ? 1 : 0,
			site,
			winter
		]),
		...weather.map(weatherValues),
		...readings.map(({ on, holes }) => {
			const { total_m, whiteShare, snow_m } = holeMeans(holes);
			return [daysBetween(freezeUpOn, on), total_m, whiteShare, snow_m];
		})
	]);
}

/** What it prints: a row of figures a day, and how long each run took. */
export function readEnsemble(stdout: string): { days: number[][]; times_ms: number[] } {
	const lines = readNumbers(stdout);
	const times_ms = (lines.at(-1) ?? []).map((time_ns) => time_ns / 1e6);
	return { days: lines.slice(0, -1), times_ms };
}

/** The same row of the model's own. */
export function figuresOf({ quantiles, bound, column, site }: EstimatedDay): number[] {
	const { clear_m, white_m, snow_m, slush_m, total_m, effective_m } = quantiles;
	return [
		...[clear_m, white_m, snow_m, slush_m, total_m, effective_m].flatMap(
			({ p05, p10, p50, p90, p95 }) => [p05, p10, p50, p90, p95].map((value) => value ?? NaN)
		),
		bound.spot_m,
		bound.fiveSpots_m,
		bound.total_m,
		column.snow_m,
		column.snowDensity_kg_m3,
		column.slush_m,
		column.white_m,
		column.clear_m,
		column.liquidFraction,
		site.mean_m,
		site.sd_m
	];
}

/** Largest difference of any figure of any day; infinite when there are not as many. */
export function largestApart(own: readonly number[][], c: readonly number[][]): number {
	const flat = own.flat();
	const other = c.flat();
	if (flat.length !== other.length) return Infinity;
	return flat.reduce((most, value, i) => Math.max(most, Math.abs(value - (other[i] ?? NaN))), 0);
}
