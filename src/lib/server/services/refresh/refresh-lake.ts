import { winterOf } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { listLakeSourceRows } from '../../storage/lake-sources.ts';
import { listWintersBefore } from '../../storage/winters.ts';
import { getLake } from '../lakes.ts';
import { localDay } from '../local-day.ts';
import { listSources } from '../sources/sources.ts';
import type { RefreshState, SourceProgress, Wish } from './progress.ts';
import { lastProgress, wish } from './wishes.ts';

export type { RefreshState, SourceProgress };

/** A lake that uses no weather source has nothing to refresh. */
export class NoSource extends Error {
	override name = 'NoSource';

	constructor(lakeId: string) {
		super(`Lake "${lakeId}" uses no weather source that is on; choose one first`);
	}
}

/** Asks a lake's sources now, as far as their limits allow. @throws LakeNotFound, NoSource */
export function startRefresh(ctx: Context, lakeId: string): Promise<RefreshState> {
	return start(ctx, lakeId, 'new');
}

/**
 * Asks a lake's sources for the earlier winters that have a freeze-up on record, as far as their limits
 * allow; what is left is asked for when this is called again. @throws LakeNotFound, NoSource
 */
export function startEarlierWinters(ctx: Context, lakeId: string): Promise<RefreshState> {
	return start(ctx, lakeId, 'earlierWinters');
}

/** Earlier winters of a lake with a freeze-up on record. @throws LakeNotFound */
export async function countEarlierWinters(ctx: Context, lakeId: string): Promise<number> {
	const { timeZone } = await getLake(ctx, lakeId);
	const winter = winterOf(localDay(ctx.now(), timeZone));
	return (await listWintersBefore(ctx.db, lakeId, winter)).length;
}

async function start(ctx: Context, lakeId: string, what: Wish): Promise<RefreshState> {
	await getLake(ctx, lakeId);
	const rows = await listLakeSourceRows(ctx.db, lakeId);
	const on = new Set(
		(await listSources(ctx)).filter(({ isOn, source }) => isOn && source).map(({ id }) => id)
	);
	const used = rows.filter(({ source_id }) => on.has(source_id));
	if (used.length === 0) throw new NoSource(lakeId);
	for (const use of used) await wish(ctx, use, what);
	return refreshState(ctx, lakeId);
}

/** How the refreshing of a lake's weather goes. @throws LakeNotFound */
export async function refreshState(ctx: Context, lakeId: string): Promise<RefreshState> {
	await getLake(ctx, lakeId);
	const rows = await listLakeSourceRows(ctx.db, lakeId);
	const names = new Map((await listSources(ctx)).map(({ id, name }) => [id, name]));
	const sources: SourceProgress[] = [];
	for (const row of rows) {
		sources.push({
			source: row.source_id,
			name: names.get(row.source_id) ?? row.source_id,
			...((await lastProgress(ctx, row.id)) ?? IDLE),
			nextAt: row.next_at === null ? null : new Date(row.next_at)
		});
	}
	const isRunning = sources.some(({ status }) => status === 'waiting' || status === 'asking');
	return { lake: lakeId, isRunning, sources };
}

const IDLE = {
	status: 'idle' as const,
	doneDays: 0,
	wantedDays: 0,
	sentences: [],
	startedAt: null,
	finishedAt: null
};
