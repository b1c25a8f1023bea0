import { z } from 'zod';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { latestOf } from './latest.ts';
import { getLake } from './lakes.ts';

/** Why a reading of a day cannot be; `null` where it can. */
export function aheadReason(on: IsoDate, today: IsoDate): string | null {
	return on > today
		? `${on} is after today at the lake, ${today}; give the day it was measured`
		: null;
}

/**
 * Nobody has measured on a day to come: stored, such a hole would count as fresh once its day is there.
 * @throws ZodError at the days that are ahead, LakeNotFound
 */
export async function refuseAhead(
	ctx: Context,
	lakeId: string,
	readings: readonly { on: IsoDate }[]
): Promise<void> {
	const { on: today } = latestOf(ctx, await getLake(ctx, lakeId));
	const issues = readings.flatMap(({ on }, at) => {
		const message = aheadReason(on, today);
		const path = readings.length > 1 ? [at, 'on'] : ['on'];
		return message === null ? [] : [{ code: 'custom' as const, path, message, input: on }];
	});
	if (issues.length > 0) throw new z.ZodError(issues);
}
