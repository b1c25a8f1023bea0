import { z } from 'zod';
import type { LoadCase } from '#lib/model/load-case.ts';
import type { Context } from '../context.ts';
import { listHiddenLoads, replaceHiddenLoads } from '../storage/hidden-loads.ts';
import { standardLoads } from './charts.ts';
import { listLoads, LoadNotFound } from './own-loads.ts';

export const shownInput = z
	.strictObject({
		shown: z
			.array(z.string().min(1).max(80))
			.min(1, 'must name one load at least')
			.max(1000)
			.describe('Ids of the loads that the pages of the lake show')
	})
	.meta({ id: 'ShownLoads' });

/** A load of a lake's list. */
export interface ListedLoad extends LoadCase {
	/** Comes with the app and can't be changed. */
	isStandard: boolean;
	isShown: boolean;
}

/** All that a lake has, and which of them are shown. @throws LakeNotFound */
export async function listedLoads(ctx: Context, lakeId: string): Promise<ListedLoad[]> {
	const loads = await listLoads(ctx, lakeId);
	const shown = new Set(shownOf(loads, await listHiddenLoads(ctx.db, lakeId)));
	return loads.map((load) => ({
		...load,
		isStandard: standardLoads.some(({ id }) => id === load.id),
		isShown: shown.has(load)
	}));
}

/** Those of a list that nobody has hidden; all of them where none would be left. */
export function shownOf(loads: readonly LoadCase[], hidden: readonly string[]): LoadCase[] {
	const shown = loads.filter(({ id }) => !hidden.includes(id));
	return shown.length === 0 ? [...loads] : shown;
}

/** The ids of those that a lake's pages show, given its list. */
export async function shownIds(
	{ db }: Context,
	lakeId: string,
	loads: readonly LoadCase[]
): Promise<string[]> {
	return shownOf(loads, await listHiddenLoads(db, lakeId)).map(({ id }) => id);
}

/** Hides all others. @throws LakeNotFound; LoadNotFound for an id that is none of the lake's. */
export async function setShownLoads(
	ctx: Context,
	lakeId: string,
	{ shown }: z.output<typeof shownInput>
): Promise<LoadCase[]> {
	const loads = await listLoads(ctx, lakeId);
	const unknown = shown.find((id) => !loads.some((load) => load.id === id));
	if (unknown !== undefined) throw new LoadNotFound(lakeId, unknown);
	const hidden = loads.filter(({ id }) => !shown.includes(id)).map(({ id }) => id);
	await replaceHiddenLoads(ctx.db, lakeId, hidden);
	return shownOf(loads, hidden);
}
