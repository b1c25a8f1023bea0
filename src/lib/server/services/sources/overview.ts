import type { Context } from '../../context.ts';
import { readIssueTimes } from '../../storage/forecasts.ts';
import { listUsesOfSource, type LakeSourceRow } from '../../storage/lake-sources.ts';
import { listLakes } from '../lakes.ts';
import { isAnyAsked } from '../refresh/wishes.ts';
import { failingOf, type Failing } from './failing.ts';
import { getSource, listSources, type SourceRecord } from './sources.ts';

/** A source as a person looks after it. */
export interface SourceOverview extends SourceRecord {
	/** The lakes that use it. */
	lakes: { id: string; name: string }[];
	/** The newest of all its lakes. */
	forecastIssuedAt: Date | null;
	/** What fails at present, for the first of its lakes where anything does. */
	failing: Failing | null;
	isAsking: boolean;
}

/** All sources with how they do, in the order in which they were made. */
export async function sourceOverviews(ctx: Context): Promise<SourceOverview[]> {
	const names = await lakeNames(ctx);
	const records = await listSources(ctx);
	return Promise.all(records.map((record) => overviewOf(ctx, record, names)));
}

/** @throws SourceNotFound */
export async function sourceOverview(ctx: Context, id: string): Promise<SourceOverview> {
	return overviewOf(ctx, await getSource(ctx, id), await lakeNames(ctx));
}

async function overviewOf(
	ctx: Context,
	record: SourceRecord,
	names: ReadonlyMap<string, string>
): Promise<SourceOverview> {
	const uses = await listUsesOfSource(ctx.db, record.id);
	const ids = uses.map(({ id }) => id);
	const issued = [...(await readIssueTimes(ctx.db, ids, ctx.now())).values()];
	return {
		...record,
		lakes: uses.map(({ lake_id }) => ({ id: lake_id, name: names.get(lake_id) ?? lake_id })),
		forecastIssuedAt: issued.toSorted((a, b) => b.getTime() - a.getTime())[0] ?? null,
		failing: await firstFailing(ctx, uses),
		isAsking: await isAnyAsked(ctx, uses)
	};
}

async function firstFailing(ctx: Context, uses: readonly LakeSourceRow[]): Promise<Failing | null> {
	for (const use of uses) {
		const failing = await failingOf(ctx, use);
		if (failing) return failing;
	}
	return null;
}

async function lakeNames(ctx: Context): Promise<Map<string, string>> {
	return new Map((await listLakes(ctx)).map(({ id, name }) => [id, name]));
}
