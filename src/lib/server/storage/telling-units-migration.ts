import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** In which units a lake is told of; before they were asked for, everything was told in metric ones. */
export async function tellingUnits(db: Kysely<Database>): Promise<void> {
	await sql`ALTER TABLE telling ADD COLUMN
		measure TEXT NOT NULL DEFAULT 'metric' CHECK (measure IN ('metric', 'imperial'))`.execute(db);
	await sql`ALTER TABLE telling ADD COLUMN
		mass TEXT NOT NULL DEFAULT 'kg' CHECK (mass IN ('kg', 'lb'))`.execute(db);
}
