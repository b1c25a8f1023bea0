import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { rmSync } from 'node:fs';
import { addDays, daysBetween, winterOf } from '#lib/model/calendar.ts';

interface InventedReading {
	on: string;
	total_cm: number | string;
	clear_cm?: number;
	white_cm?: number;
	snow_cm?: number;
	qc?: string;
}

interface InventedLake {
	code: string;
	freezeUpOn: string;
	iceOutOn?: string;
	notes?: string;
	readings: InventedReading[];
}

interface InventedDataset {
	name?: string;
	lakes: InventedLake[];
	/** Daily mean by day; an empty cell where it gives `null`. */
	air_degC: (on: string) => number | null;
}

/** Writes a tidy winters folder of invented lakes that is gone after the test. */
export function inventedFolder(...datasets: InventedDataset[]): string {
	const folder = mkdtempSync(join(tmpdir(), 'tidy-winters-'));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	const lakes = datasets.flatMap(({ name = 'invented', lakes }) =>
		lakes.map(({ code }) => `${name},${code},Invented ${code},62,25,2,5,100`)
	);
	const header = 'dataset,lake,name,lat,lon,area_km2,mean_depth_m,elevation_m';
	writeFileSync(join(folder, 'lakes.csv'), [header, ...new Set(lakes)].join('\n'));
	for (const dataset of datasets) writeDataset(folder, dataset);
	return folder;
}

function writeDataset(folder: string, { name = 'invented', lakes, air_degC }: InventedDataset) {
	const write = (file: string, lines: string[]) =>
		writeFileSync(join(folder, name, file), lines.join('\n'));
	mkdirSync(join(folder, name));
	write('weather.csv', weatherLines(lakes, air_degC));
	write('freezeup.csv', [
		'lake,winter,freeze_up_date,ice_out_date,notes',
		...lakes.map(
			({ code, freezeUpOn, iceOutOn = '', notes = '' }) =>
				`${code},${winterOf(freezeUpOn)},${freezeUpOn},${iceOutOn},${notes}`
		)
	]);
	write('ice.csv', [
		'lake,date,total_cm,clear_cm,white_cm,snow_cm,qc',
		...lakes.flatMap(({ code, readings }) =>
			readings.map((reading) =>
				[
					code,
					reading.on,
					reading.total_cm,
					reading.clear_cm ?? '',
					reading.white_cm ?? '',
					reading.snow_cm ?? '',
					reading.qc ?? ''
				].join(',')
			)
		)
	]);
}

/** From a week before the first freeze-up to the end of June after the last. */
function weatherLines(lakes: InventedLake[], air_degC: InventedDataset['air_degC']): string[] {
	const freezeUps = lakes.map(({ freezeUpOn }) => freezeUpOn).toSorted();
	const from = addDays(freezeUps[0] ?? '2001-12-01', -7);
	const to = `${Number(freezeUps.at(-1)?.slice(0, 4)) + 1}-06-30`;
	const days = Array.from({ length: daysBetween(from, to) + 1 }, (_, day) => addDays(from, day));
	return [
		'date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm,snow_depth_cm',
		...days.map((on) => `${on},${air_degC(on) ?? ''},,,0,0,`)
	];
}
