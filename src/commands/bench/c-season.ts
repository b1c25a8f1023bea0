import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { dayOfYear } from '#lib/model/calendar.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import type { SeasonInput } from '#lib/model/season.ts';

const SOURCE = fileURLToPath(new URL('time-season.c', import.meta.url));

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
	breakUp_m: true
};

/** One day's layers as season.c prints them. */
export type CLayers = [
	clear_m: number,
	white_m: number,
	slush_m: number,
	snow_m: number,
	liquidFraction: number
];

export type CSeason =
	| { status: 'ran'; states: CLayers[]; median_ms: number }
	| { status: 'noCompiler' }
	| { status: 'failed'; message: string };

/** Compiles season.c with `cc -O3` in a folder of its own, runs a winter through it, cleans up. */
export function runCSeason(input: SeasonInput): CSeason {
	const folder = mkdtempSync(join(tmpdir(), 'season-c-'));
	try {
		const program = join(folder, 'season');
		const compiled = spawnSync('cc', ['-O3', '-o', program, SOURCE, '-lm'], { encoding: 'utf8' });
		if (compiled.error) return { status: 'noCompiler' };
		if (compiled.status !== 0) return { status: 'failed', message: compiled.stderr };
		const ran = spawnSync(program, { input: asText(input), encoding: 'utf8' });
		if (ran.status !== 0) return { status: 'failed', message: `season.c exited ${ran.status}` };
		return readOutput(ran.stdout);
	} finally {
		rmSync(folder, { recursive: true });
	}
}

function asText({ lake, weather, parameters = parametersFor(lake) }: SeasonInput): string {
	const names = Object.keys(PARAMETER_ORDER) as (keyof Parameters)[];
	const lines = [
		[weather.length, lake.latitude, lake.elevation_m ?? 0],
		names.map((name) => parameters[name]),
		...weather.map((day) => [
			dayOfYear(day.on),
			Number(day.on.slice(5, 7)),
			day.air_degC,
			day.precipitation_kg_m2,
			day.snowfall_kg_m2
		])
	];
	return lines.map((line) => line.join(' ')).join('\n');
}

function readOutput(stdout: string): CSeason {
	const lines = stdout.trim().split('\n');
	const states = lines.slice(0, -1).map((line): CLayers => {
		const [clear_m = NaN, white_m = NaN, slush_m = NaN, snow_m = NaN, liquid = NaN] = line
			.split(' ')
			.map(Number);
		return [clear_m, white_m, slush_m, snow_m, liquid];
	});
	return { status: 'ran', states, median_ms: Number(lines.at(-1)) / 1e6 };
}
