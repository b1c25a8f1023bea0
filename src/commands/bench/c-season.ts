import { parametersFor } from '#lib/model/parameters.ts';
import type { SeasonInput } from '#lib/model/season.ts';
import { asText, parameterValues, readNumbers, weatherValues } from './c-parameters.ts';
import { withCProgram, type NoProgram } from './c-program.ts';

/** One day's layers as time-season.c prints them. */
export type CLayers = [
	clear_m: number,
	white_m: number,
	slush_m: number,
	snow_m: number,
	liquidFraction: number
];

export type CSeason = { status: 'ran'; states: CLayers[]; median_ms: number } | NoProgram;

/** Runs a winter through the equations in C. */
export function runCSeason(input: SeasonInput): CSeason {
	return withCProgram('time-season.c', (program): CSeason => readOutput(program(written(input))));
}

function written({ lake, weather, parameters = parametersFor(lake) }: SeasonInput): string {
	return asText([
		[weather.length, lake.latitude, lake.elevation_m ?? 0],
		parameterValues(parameters),
		...weather.map(weatherValues)
	]);
}

function readOutput(stdout: string): CSeason {
	const lines = readNumbers(stdout);
	const states = lines
		.slice(0, -1)
		.map(([clear_m = NaN, white_m = NaN, slush_m = NaN, snow_m = NaN, liquid = NaN]): CLayers => [
			clear_m,
			white_m,
			slush_m,
			snow_m,
			liquid
		]);
	return { status: 'ran', states, median_ms: (lines.at(-1)?.[0] ?? NaN) / 1e6 };
}
