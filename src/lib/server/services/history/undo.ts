import type { WinterId } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { readDeletedAt } from '../../storage/deleted.ts';
import { NotFound } from '../not-found.ts';
import { goesForGood } from './clear-away.ts';
import { restoreLoad } from '../own-loads.ts';
import { restoreRoute } from '../places/routes.ts';
import { restoreWeakSpot } from '../places/weak-spots.ts';
import { restoreReading } from '../readings.ts';
import { restoreSite } from '../sites.ts';
import { restoreSource } from '../sources/sources.ts';
import { restoreSiteWinter } from '../winters.ts';

export interface Deletion {
	/** A table whose rows are marked as deleted. */
	what: string;
	id: string;
	/** Of a winter. */
	site: string | null;
}

type Restore = (ctx: Context, lakeId: string, deletion: Deletion) => Promise<unknown>;

/** How each deletion is taken back, by the verbs that its own page uses. */
const RESTORE: Readonly<Record<string, Restore>> = {
	reading: (ctx, lake, { id }) => restoreReading(ctx, lake, id),
	weak_spot: (ctx, lake, { id }) => restoreWeakSpot(ctx, lake, id),
	route: (ctx, lake, { id }) => restoreRoute(ctx, lake, id),
	winter: (ctx, lake, { id, site }) => restoreSiteWinter(ctx, lake, site ?? '', id as WinterId),
	own_load: (ctx, lake, { id }) => restoreLoad(ctx, lake, id),
	site: (ctx, lake, { id }) => restoreSite(ctx, lake, id),
	source: (ctx, _lake, { id }) => restoreSource(ctx, id)
};

export const UNDOABLE: ReadonlySet<string> = new Set(Object.keys(RESTORE));

/** What a helper may take back; the rest is the owner's. */
export const HELPERS_UNDO: ReadonlySet<string> = new Set(['reading', 'weak_spot', 'route']);

class NothingDeleted extends NotFound {
	constructor(id: string) {
		super('deletion', id, ' that can be taken back');
	}
}

/** Takes a deletion back. @throws NotFound where nothing is deleted, or not any more */
export async function undoDeletion(
	ctx: Context,
	lakeId: string,
	deletion: Deletion
): Promise<void> {
	const restore = RESTORE[deletion.what];
	const deletedAt = await readDeletedAt(ctx.db, { lakeId, ...deletion });
	if (!restore || deletedAt === null || deletedAt < goesForGood(ctx)) {
		throw new NothingDeleted(deletion.id);
	}
	await restore(ctx, lakeId, deletion);
}

/** Whether it is this deletion that still holds, and not a later one or none. */
export async function isStillDeleted(
	{ db }: Context,
	lakeId: string,
	deletion: Deletion,
	deletedAt: string
): Promise<boolean> {
	return (await readDeletedAt(db, { lakeId, ...deletion })) === deletedAt;
}
