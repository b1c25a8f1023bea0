import type { Context } from '../context.ts';
import { listDeletedLakeRows } from '../storage/lakes.ts';

/** A lake that can still be brought back, by {@link restoreLake} of `lakes.ts`. */
export interface DeletedLake {
	id: string;
	name: string;
	deletedAt: Date;
}

/** The last deleted first. */
export async function listDeletedLakes({ db }: Context): Promise<DeletedLake[]> {
	const rows = await listDeletedLakeRows(db);
	return rows.map(({ id, name, deleted_at }) => ({ id, name, deletedAt: new Date(deleted_at) }));
}
