import { sql, type Kysely } from 'kysely';
import { real } from './column-checks.ts';
import type { Database } from './schema.ts';

/**
 * What a site is, whose ice a track was before its first work, and where a reading was taken.
 *
 * A position is a whole one or none. A deleted site keeps its rows until it is brought back.
 */
export async function sites(db: Kysely<Database>): Promise<void> {
	const changes = [
		`ALTER TABLE site ADD COLUMN kind TEXT NOT NULL DEFAULT 'basin'
			CHECK (kind IN ('basin', 'bay', 'track'))`,
		`ALTER TABLE site ADD COLUMN parent_id TEXT
			CHECK ((kind = 'track') = (parent_id IS NOT NULL) AND parent_id <> id)`,
		'ALTER TABLE site ADD COLUMN deleted_at TEXT',
		`ALTER TABLE reading ADD COLUMN ${real('latitude', -90, 90)}`,
		`ALTER TABLE reading ADD COLUMN ${real('longitude', -180, 180)}
			CHECK ((latitude IS NULL) = (longitude IS NULL))`
	];
	for (const change of changes) await sql.raw(change).execute(db);
}
