import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** The database's own clock: the same for all who share it, however their machines' clocks differ. */
const NOW_S = sql<number>`unixepoch('subsec')`;

/** Takes a lease for so long from now, or prolongs it; false while somebody else holds it. */
export async function takeLease(
	db: Kysely<Database>,
	name: string,
	holder: string,
	span_s: number
): Promise<boolean> {
	await cutShort(db, name, holder, span_s);
	const { rows } = await sql<{ holder: string }>`
		INSERT INTO lease (name, holder, until_s) VALUES (${name}, ${holder}, ${NOW_S} + ${span_s})
		ON CONFLICT (name) DO UPDATE SET holder = excluded.holder, until_s = excluded.until_s
			WHERE lease.holder = excluded.holder OR lease.until_s <= ${NOW_S}
		RETURNING holder`.execute(db);
	return rows.length > 0;
}

/**
 * A lease that lasts longer than any does was taken before the database's clock was set back, and a
 * holder that died would keep it as long as that. It has its span from now: one that lives prolongs it.
 */
async function cutShort(
	db: Kysely<Database>,
	name: string,
	holder: string,
	span_s: number
): Promise<void> {
	await sql`UPDATE lease SET until_s = ${NOW_S} + ${span_s}
		WHERE name = ${name} AND holder <> ${holder} AND until_s > ${NOW_S} + ${2 * span_s}`.execute(db);
}

/** Lets others take it at once. */
export async function giveUpLease(
	db: Kysely<Database>,
	name: string,
	holder: string
): Promise<void> {
	await db.deleteFrom('lease').where('name', '=', name).where('holder', '=', holder).execute();
}

export async function isLeaseHeld(db: Kysely<Database>, name: string): Promise<boolean> {
	const row = await db
		.selectFrom('lease')
		.select('holder')
		.where('name', '=', name)
		.where('until_s', '>', NOW_S)
		.executeTakeFirst();
	return row !== undefined;
}
