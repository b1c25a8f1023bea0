import type { Context } from '../context.ts';
import { findLakeRow, type LakeRow } from '../storage/lakes.ts';
import {
	listLakeSourceRows,
	readCsvPosition,
	type LakeSourceRow
} from '../storage/lake-sources.ts';
import { correctionFor } from './elevation.ts';

/** Where weather comes from: what people imported, or a source. */
export type Origin =
	| { kind: 'csv' }
	| { kind: 'source'; lakeSourceId: number; sourceId: string; correction_K: number };

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

function originOf(row: LakeSourceRow, lake: LakeRow): Origin {
	const isWanted = row.corrects_elevation === 1;
	return {
		kind: 'source',
		lakeSourceId: row.id,
		sourceId: row.source_id,
		correction_K: correctionFor(isWanted, row.station_elevation_m, lake.elevation_m)
	};
}
