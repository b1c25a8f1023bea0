import type { Context } from '../context.ts';
import { findLakeRow, type LakeRow } from '../storage/lakes.ts';
import {
	listLakeSourceRows,
	readCsvPosition,
	type LakeSourceRow
} from '../storage/lake-sources.ts';
import { correctionFor } from './elevation.ts';

/** Where weather comes from: what people imported, or a source. */
export type Origin = { kind: 'csv' } | SourceOrigin;

export interface SourceOrigin {
	kind: 'source';
	lakeSourceId: number;
	sourceId: string;
	/** What its observations are made warmer by. */
	correction_K: number;
	/** The same for a forecast, which may be made for a place of another elevation. */
	forecastCorrection_K: (place_m: number | null) => number;
}

/** A lake's origins, the most trusted first, with what is needed to join them. */
export interface Trust {
	lakeId: string;
	timeZone: string;
	latitude: number;
	origins: readonly Origin[];
}

/** @throws Error when there is no such lake. */
export async function readTrust({ db }: Context, lakeId: string): Promise<Trust> {
	const lake = await findLakeRow(db, lakeId);
	if (!lake) throw new Error(`Weather of lake "${lakeId}" asked for, which is not there`);
	const rows = await listLakeSourceRows(db, lakeId);
	const csvPosition = await readCsvPosition(db, lakeId);
	const before = rows.filter(({ position }) => position < csvPosition);
	const after = rows.filter(({ position }) => position >= csvPosition);
	const origins: Origin[] = [
		...before.map((row) => originOf(row, lake)),
		{ kind: 'csv' },
		...after.map((row) => originOf(row, lake))
	];
	return { lakeId, timeZone: lake.time_zone, latitude: lake.latitude, origins };
}

function originOf(row: LakeSourceRow, lake: LakeRow): SourceOrigin {
	const isWanted = row.corrects_elevation === 1;
	const station_m = row.station_elevation_m;
	return {
		kind: 'source',
		lakeSourceId: row.id,
		sourceId: row.source_id,
		correction_K: correctionFor(isWanted, station_m, lake.elevation_m),
		forecastCorrection_K: (place_m) =>
			correctionFor(isWanted, place_m ?? station_m, lake.elevation_m)
	};
}
