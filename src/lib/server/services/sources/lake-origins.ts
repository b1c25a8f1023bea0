import type { Context } from '../../context.ts';
import { readFetchStates } from '../../storage/fetch-states.ts';
import { listLakeSourceRows } from '../../storage/lake-sources.ts';
import { refreshState, type SourceProgress } from '../refresh/refresh-lake.ts';
import { failingOf, type Failing } from './failing.ts';
import { listSources } from './sources.ts';
import { getLakeOrder, type LakeOrigin } from './lake-order.ts';

type SourceOrigin = Extract<LakeOrigin, { kind: 'source' }>;

/** One origin of a lake's weather with how it does. */
export type OriginOverview = { kind: 'csv' } | (SourceOrigin & HowItDoes);

interface HowItDoes {
	failing: Failing | null;
	progress: SourceProgress | null;
	/** Of its latest answer; `null` before any. */
	answeredAt: Date | null;
	lacksKey: boolean;
}

/** Where a lake's weather comes from, the most trusted first, and how each does. @throws LakeNotFound */
export async function lakeOrigins(ctx: Context, lakeId: string): Promise<OriginOverview[]> {
	const order = await getLakeOrder(ctx, lakeId);
	const state = await refreshState(ctx, lakeId);
	const lacking = new Set(
		(await listSources(ctx)).flatMap(({ id, source, hasKey }) =>
			source?.needsKey && !hasKey ? [id] : []
		)
	);
	const rows = await listLakeSourceRows(ctx.db, lakeId);
	return Promise.all(
		order.map(async (origin): Promise<OriginOverview> => {
			if (origin.kind === 'csv') return origin;
			const row = rows.find(({ source_id }) => source_id === origin.source);
			const progress = state.sources.find(({ source }) => source === origin.source);
			return {
				...origin,
				failing: row ? await failingOf(ctx, row) : null,
				progress: progress ?? null,
				answeredAt: row ? await answeredAt(ctx, row.id) : null,
				lacksKey: lacking.has(origin.source)
			};
		})
	);
}

async function answeredAt({ db }: Context, useId: number): Promise<Date | null> {
	const { history, forecast } = await readFetchStates(db, useId);
	const times = [history?.last_success_at, forecast?.last_success_at].filter((at) => at != null);
	const last = times.toSorted().at(-1);
	return last === undefined ? null : new Date(last);
}
