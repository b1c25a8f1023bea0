import { sql, type Kysely } from 'kysely';
import { real } from './column-checks.ts';
import type { Database } from './schema.ts';

/**
 * What goes with a load, and which loads of a lake are not shown: those that nobody has hidden are, so
 * that a new one is seen at once. Standard loads are in no table, so a hidden one refers to none.
 */
export async function ownLoads(db: Kysely<Database>): Promise<void> {
	for (const statement of [
		`ALTER TABLE own_load ADD COLUMN ${real('trailer_kg', 1, 1_000_000)}`,
		`ALTER TABLE own_load ADD COLUMN ${real('trailer_apart_m', 0, 1000)}`,
		`ALTER TABLE own_load ADD COLUMN
			how_many INTEGER NOT NULL DEFAULT 1 CHECK (how_many BETWEEN 1 AND 200)`,
		`ALTER TABLE own_load ADD COLUMN ${real('spacing_m', 0, 1000)}`,
		`CREATE TABLE hidden_load (
			lake_id TEXT NOT NULL REFERENCES lake (id) ON DELETE CASCADE,
			load_id TEXT NOT NULL CHECK (length(load_id) BETWEEN 1 AND 80),
			PRIMARY KEY (lake_id, load_id)
		) STRICT, WITHOUT ROWID`
	]) {
		await sql.raw(statement).execute(db);
	}
}
