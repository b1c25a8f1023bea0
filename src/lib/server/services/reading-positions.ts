import { z } from 'zod';
import type { Context } from '../context.ts';
import { findReadingPosition, writeReadingPosition } from '../storage/reading-positions.ts';
import { between } from './fields.ts';
import { getReading } from './readings.ts';

/** Where a reading was taken, in degrees. */
export const positionInput = z
	.strictObject({
		latitude: between(-90, 90, 'degrees north'),
		longitude: between(-180, 180, 'degrees east')
	})
	.meta({ id: 'Position', description: 'Exact; no list, table or export has it' });

export type Position = z.output<typeof positionInput>;

/**
 * Kept apart from the reading, so that whoever is given readings is not given these.
 * `null` where nobody stored it. @throws LakeNotFound, ReadingNotFound
 */
export async function getPosition(
	ctx: Context,
	lakeId: string,
	readingId: string
): Promise<Position | null> {
	const { id } = await getReading(ctx, lakeId, readingId);
	return findReadingPosition(ctx.db, id);
}

/** `null` forgets it. @throws LakeNotFound, ReadingNotFound */
export async function putPosition(
	ctx: Context,
	lakeId: string,
	readingId: string,
	position: Position | null
): Promise<void> {
	const { id } = await getReading(ctx, lakeId, readingId);
	await writeReadingPosition(ctx.db, id, position);
}
