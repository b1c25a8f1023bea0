import type { IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '#lib/server/context.ts';
import { getLake, type LakeRecord } from '#lib/server/services/lakes.ts';
import { localDay } from '#lib/server/services/local-day.ts';

/** A lake and its own today. @throws LakeNotFound */
export async function lakeToday(
	context: Context,
	lakeId: string
): Promise<{ lake: LakeRecord; today: IsoDate }> {
	const lake = await getLake(context, lakeId);
	return { lake, today: lake.today ?? localDay(context.now(), lake.timeZone) };
}
