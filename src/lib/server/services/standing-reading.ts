import type { Context } from '../context.ts';
import { findReading, type FoundReading } from '../storage/readings.ts';
import { getLake } from './lakes.ts';
import { NotFound } from './not-found.ts';

export class ReadingNotFound extends NotFound {
	constructor(lakeId: string, id: string) {
		super('reading', id, ` of lake "${lakeId}"`);
	}
}

/** The reading with the version that stands. @throws LakeNotFound, ReadingNotFound */
export async function findStanding(
	ctx: Context,
	lakeId: string,
	id: string
): Promise<FoundReading> {
	await getLake(ctx, lakeId);
	const found = await findReading(ctx.db, lakeId, id);
	if (!found || found.isDeleted) throw new ReadingNotFound(lakeId, id);
	return found;
}
