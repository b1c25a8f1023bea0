import type { Reading } from '#lib/model/reading.ts';
import type { Context } from '#lib/server/context.ts';
import { editReading } from '#lib/server/services/edit-reading.ts';
import type { ReadingChange } from '#lib/server/services/reading-input.ts';

/** Changes whatever version stands, as a program does that names none. */
export async function updateReading(
	ctx: Context,
	lakeId: string,
	id: string,
	change: ReadingChange
): Promise<Reading> {
	const edited = await editReading(ctx, lakeId, id, { change, version: null });
	if (edited.status === 'stored') return edited.reading;
	throw new Error(`reading "${id}" was changed by another at the same moment`);
}
