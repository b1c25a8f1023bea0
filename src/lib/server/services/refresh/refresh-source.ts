import type { Context } from '../../context.ts';
import { listUsesOfSource } from '../../storage/lake-sources.ts';
import { getSource } from '../sources/sources.ts';
import { wish } from './wishes.ts';

/**
 * Asks a source now for every lake that uses it, as far as its limits allow, and tells how many
 * those are; none while it is off. @throws SourceNotFound
 */
export async function refreshSource(ctx: Context, sourceId: string): Promise<number> {
	const { isOn, source } = await getSource(ctx, sourceId);
	if (!isOn || !source) return 0;
	const uses = await listUsesOfSource(ctx.db, sourceId);
	for (const use of uses) await wish(ctx, use);
	return uses.length;
}
