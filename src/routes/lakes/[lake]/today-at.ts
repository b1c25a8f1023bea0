import type { IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '#lib/server/context.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { localDay } from '#lib/server/services/local-day.ts';

/** Today at the lake. @throws LakeNotFound */
export async function todayAt(context: Context, lakeId: string): Promise<IsoDate> {
	const lake = await getLake(context, lakeId);
	return lake.today ?? localDay(context.now(), lake.timeZone);
}
