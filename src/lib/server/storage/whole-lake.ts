import type { Insertable, Kysely, Transaction } from 'kysely';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import { recordAsOne } from './history.ts';
import { markAllForJoining } from './joined-days.ts';
import { writeReadings } from './readings.ts';
import type { Database, LakeTable, SiteTable } from './schema.ts';
import { toDayColumns } from './weather-columns.ts';
import { writeSiteWinterIn } from './winters.ts';

export interface WholeLake {
	lake: Insertable<LakeTable>;
	/** Those that tracks were made on come before them. */
	sites: WholeSite[];
	/** Daily records, each day once. */
	days: readonly DayValues[];
}

export interface WholeSite {
	site: Omit<Insertable<SiteTable>, 'lake_id'>;
	winters: readonly SiteWinter[];
	readings: readonly Reading[];
}

/** Rows that are written at once: SQLite takes 32,766 values. */
const ROWS_AT_ONCE = 500;

/** Stores lakes with all that belongs to them: all of them or nothing. */
export async function insertWholeLakes(
	db: Kysely<Database>,
	lakes: readonly WholeLake[],
	createdAt: Date
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		for (const whole of lakes) {
			const count = (of: 'winters' | 'readings') =>
				whole.sites.reduce((sum, site) => sum + site[of].length, 0);
			const counts = { winters: count('winters'), readings: count('readings') };
			await recordAsOne(tx, 'winters', whole.lake.id, counts, () =>
				insertWhole(tx, whole, createdAt)
			);
		}
	});
}

async function insertWhole(
	tx: Transaction<Database>,
	{ lake, sites, days }: WholeLake,
	createdAt: Date
): Promise<void> {
	const lakeId = lake.id;
	await tx.insertInto('lake').values(lake).execute();
	for (const { site, winters, readings } of sites) {
		await tx
			.insertInto('site')
			.values({ lake_id: lakeId, ...site })
			.execute();
		const key = { lakeId, site: site.id };
		for (const winter of winters) await writeSiteWinterIn(tx, key, winter);
		await writeReadings(tx, { ...key, createdAt }, readings);
	}
	const rows = days.map((day) => ({
		lake_id: lakeId,
		basis: 'daily' as const,
		...toDayColumns(day)
	}));
	for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
		await tx
			.insertInto('weather_day')
			.values(rows.slice(from, from + ROWS_AT_ONCE))
			.execute();
	}
	await markAllForJoining(tx, lakeId);
}
