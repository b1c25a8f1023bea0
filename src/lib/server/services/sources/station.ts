import { distance_m } from '#lib/model/distance.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import { correctionFor } from '../elevation.ts';
import type { LakeRecord } from '../lakes.ts';

/** What a source said of the place that it measures or calculates for; `null` is not told. */
export interface StationFacts {
	stationName: string | null;
	/** From the lake. */
	distance_m: number | null;
	stationElevation_m: number | null;
	/** How much higher the station lies than the lake. */
	higherBy_m: number | null;
	/** What its temperatures are made warmer by. */
	correction_K: number;
	/** What they would be made warmer by, were it switched on. */
	possibleCorrection_K: number;
}

export function stationFacts(row: LakeSourceRow, lake: LakeRecord): StationFacts {
	const { station_latitude: latitude, station_longitude: longitude } = row;
	const station_m = row.station_elevation_m;
	const isPlaced = latitude !== null && longitude !== null;
	const isHeightKnown = station_m !== null && lake.elevation_m !== null;
	return {
		stationName: row.station_name,
		distance_m: isPlaced ? distance_m(lake, { latitude, longitude }) : null,
		stationElevation_m: station_m,
		higherBy_m: isHeightKnown ? station_m - (lake.elevation_m ?? 0) : null,
		correction_K: correctionFor(row.corrects_elevation === 1, station_m, lake.elevation_m),
		possibleCorrection_K: correctionFor(true, station_m, lake.elevation_m)
	};
}
