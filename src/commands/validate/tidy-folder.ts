import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { readTable, UnreadableFolder } from './tidy-table.ts';
import { freezeUpRow, iceRow, lakeRow, weatherRow } from '#lib/server/services/tidy/rows.ts';
import type { FreezeUpRow, IceRow, LakeRow, WeatherRow } from '#lib/server/services/tidy/rows.ts';

/** Lakes that share a weather record, with what was measured on them. */
export interface Dataset {
	name: string;
	/** By the code that the other files use. */
	lakes: Map<string, LakeFacts>;
	/** Sorted, one row a day. */
	weather: WeatherDay[];
	winters: FreezeUpRow[];
	ice: IceRow[];
}

/**
 * Reads a tidy winters folder: `lakes.csv`, and for each dataset named in it a folder with
 * `weather.csv`, `ice.csv` and `freezeup.csv`.
 * @throws UnreadableFolder
 */
export function readTidyFolder(folder: string): Dataset[] {
	if (!existsSync(folder)) throw new UnreadableFolder(`there is no folder ${folder}`);
	if (!statSync(folder).isDirectory()) throw new UnreadableFolder(`${folder} is not a folder`);
	const lakes = readTable(join(folder, 'lakes.csv'), lakeRow, ['dataset', 'lake', 'lat', 'lon']);
	const names = [...new Set(lakes.map((lake) => lake.dataset))];
	return names.map((name) =>
		readDataset(
			folder,
			name,
			lakes.filter((lake) => lake.dataset === name)
		)
	);
}

function readDataset(folder: string, name: string, lakes: LakeRow[]): Dataset {
	const file = (table: string) => join(folder, name, table);
	const weather = readTable(file('weather.csv'), weatherRow, ['date', 'tmean_c']);
	const winters = readTable(file('freezeup.csv'), freezeUpRow, [
		'lake',
		'winter',
		'freeze_up_date'
	]);
	const ice = readTable(file('ice.csv'), iceRow, ['lake', 'date', 'total_cm']);
	const byDay = new Map(weather.map((row) => [row.date, weatherDay(row)]));
	return {
		name,
		lakes: new Map(lakes.map((lake) => [lake.lake, facts(lake)])),
		weather: [...byDay.values()].toSorted((a, b) => (a.on < b.on ? -1 : 1)),
		winters,
		ice
	};
}

function facts(row: LakeRow): LakeFacts {
	return {
		latitude: row.lat,
		longitude: row.lon,
		elevation_m: row.elevation_m,
		area_km2: row.area_km2,
		meanDepth_m: row.mean_depth_m,
		water: row.water
	};
}

function weatherDay(row: WeatherRow): WeatherDay {
	return {
		on: row.date,
		source: 'observed',
		air_degC: row.tmean_c,
		min_degC: row.tmin_c,
		max_degC: row.tmax_c,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: row.precip_mm,
		// The folder's snowfall depth is ten times its water, so that 1 cm is 1 kg/m².
		snowfall_kg_m2: row.snowfall_we_mm ?? row.snowfall_cm,
		landSnow_m: row.snow_depth_cm === null ? null : row.snow_depth_cm / 100,
		wind_m_s: null
	};
}
