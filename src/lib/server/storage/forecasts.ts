import { sql, type Kysely, type Transaction } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import type { Database } from './schema.ts';
import { DAY_COLUMNS, toDayColumns, toDayValues } from './weather-columns.ts';

/** A forecast as it was issued. */
export interface Issue {
	lakeSourceId: number;
	issuedAt: Date;
	/** What its days were made warmer by, for the elevation. */
	correction_K: number;
	/** Of the place that it is for; `null` where that is not told. */
	place_m: number | null;
	days: readonly DayValues[];
}

/** Keeps a forecast; the same issue again replaces it. */
export async function storeIssue(tx: Transaction<Database>, issue: Issue): Promise<void> {
	const { lakeSourceId, issuedAt, correction_K, place_m, days } = issue;
	const key = { lake_source_id: lakeSourceId, issued_at: issuedAt.toISOString() };
	const facts = { correction_K, station_elevation_m: place_m };
	const { id } = await tx
		.insertInto('forecast_issue')
		.values({ ...key, ...facts })
		.onConflict((conflict) => conflict.columns(['lake_source_id', 'issued_at']).doUpdateSet(facts))
		.returning('id')
		.executeTakeFirstOrThrow();
	await tx.deleteFrom('forecast_day').where('issue_id', '=', id).execute();
	const rows = days.map((day) => ({ issue_id: id, ...toDayColumns(day) }));
	if (rows.length > 0) await tx.insertInto('forecast_day').values(rows).execute();
}

/** Days that all issues are kept; of older days the last issue is, for as many years. */
const ALL_KEPT_D = 14;
const LAST_KEPT_D = 3 * 366;

/**
 * Lets older issues go: after two weeks all but the last of each UTC day, after three years that; and
 * such as say that they were made in the future, which are never young enough to be doubted.
 */
export async function pruneIssues(
	db: Kysely<Database>,
	lakeSourceId: number,
	now: Date
): Promise<void> {
	const before = (days: number) => new Date(now.getTime() - days * 86_400_000).toISOString();
	await sql`DELETE FROM forecast_issue WHERE lake_source_id = ${lakeSourceId} AND (
		issued_at < ${before(LAST_KEPT_D)}
		OR issued_at > ${before(0)}
		OR issued_at < ${before(ALL_KEPT_D)} AND EXISTS (
			SELECT 1 FROM forecast_issue later WHERE later.lake_source_id = ${lakeSourceId}
				AND later.issued_at > forecast_issue.issued_at
				AND substr(later.issued_at, 1, 10) = substr(forecast_issue.issued_at, 1, 10)))`.execute(db);
	await db
		.deleteFrom('forecast_hour')
		.where('lake_source_id', '=', lakeSourceId)
		.where('at_s', '<', now.getTime() / 1000 - 3 * 86_400)
		.execute();
}

export interface IssuedDay {
	lakeSourceId: number;
	issuedAt: Date;
	correction_K: number;
	place_m: number | null;
	day: DayValues;
}

export interface IssueSpan {
	/** Issued after this, and not after `by`. */
	after: Date;
	by: Date;
	from: IsoDate;
	to: IsoDate;
}

/** Every issue's days: the newest issue first, each by day. */
export async function readIssuedDays(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[],
	span: IssueSpan
): Promise<IssuedDay[]> {
	if (lakeSourceIds.length === 0) return [];
	const rows = await issued(db, lakeSourceIds, span)
		.select('issued_at')
		.orderBy('issued_at', 'desc')
		.orderBy('day')
		.execute();
	return rows.map(toIssuedDay);
}

/** Each day with a temperature from the newest issue that tells it, by use and day. */
export async function readNewestIssuedDays(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[],
	span: IssueSpan
): Promise<IssuedDay[]> {
	if (lakeSourceIds.length === 0) return [];
	// SQLite takes the other columns from the row that has the maximum.
	const rows = await issued(db, lakeSourceIds, span)
		.select((eb) => eb.fn.max('issued_at').as('issued_at'))
		.where(sql<boolean>`(air_degC IS NOT NULL OR (min_degC IS NOT NULL AND max_degC IS NOT NULL))`)
		.groupBy(['lake_source_id', 'day'])
		.orderBy('lake_source_id')
		.orderBy('day')
		.execute();
	return rows.map(toIssuedDay);
}

function issued(db: Kysely<Database>, lakeSourceIds: readonly number[], span: IssueSpan) {
	return db
		.selectFrom('forecast_issue')
		.innerJoin('forecast_day', 'forecast_day.issue_id', 'forecast_issue.id')
		.select(['lake_source_id', 'correction_K', 'station_elevation_m', 'day', ...DAY_COLUMNS])
		.where('lake_source_id', 'in', lakeSourceIds)
		.where('issued_at', '>', span.after.toISOString())
		.where('issued_at', '<=', span.by.toISOString())
		.where('day', '>=', span.from)
		.where('day', '<=', span.to);
}

type IssuedRow = Parameters<typeof toDayValues>[0] & {
	lake_source_id: number;
	issued_at: string;
	correction_K: number;
	station_elevation_m: number | null;
};

function toIssuedDay({
	lake_source_id,
	issued_at,
	correction_K,
	station_elevation_m: place_m,
	...columns
}: IssuedRow): IssuedDay {
	const day = toDayValues(columns);
	return {
		lakeSourceId: lake_source_id,
		issuedAt: new Date(issued_at),
		correction_K,
		place_m,
		day
	};
}

/** When the newest forecast of each use was issued, by an instant. */
export async function readIssueTimes(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[],
	by: Date
): Promise<Map<number, Date>> {
	if (lakeSourceIds.length === 0) return new Map();
	const rows = await db
		.selectFrom('forecast_issue')
		.select((eb) => ['lake_source_id', eb.fn.max('issued_at').as('issued_at')])
		.where('lake_source_id', 'in', lakeSourceIds)
		.where('issued_at', '<=', by.toISOString())
		.groupBy('lake_source_id')
		.execute();
	return new Map(rows.map((row) => [row.lake_source_id, new Date(row.issued_at)]));
}

/** Of the place that the newest forecast of each use is made for, where that is told. */
export async function readForecastElevations(
	db: Kysely<Database>,
	lakeSourceIds: readonly number[]
): Promise<Map<number, number>> {
	if (lakeSourceIds.length === 0) return new Map();
	// SQLite takes the other columns from the row that has the maximum.
	const rows = await db
		.selectFrom('forecast_issue')
		.select((eb) => [
			'lake_source_id',
			'station_elevation_m',
			eb.fn.max('issued_at').as('issued_at')
		])
		.where('lake_source_id', 'in', lakeSourceIds)
		.groupBy('lake_source_id')
		.execute();
	return new Map(
		rows.flatMap(({ lake_source_id, station_elevation_m: place_m }) =>
			place_m === null ? [] : [[lake_source_id, place_m] as const]
		)
	);
}
