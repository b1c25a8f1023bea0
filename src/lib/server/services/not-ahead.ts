import { z } from 'zod';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { SiteEvent } from '#lib/model/site-winter.ts';
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

/**
 * What is planned is no event: left undone, it would thicken the ice by work that nobody did, or close
 * water that is open. Pages tell what a plan would do without storing it.
 * @throws ZodError at the days that are ahead, LakeNotFound
 */
export async function refuseAheadEvents(
	ctx: Context,
	lakeId: string,
	events: readonly SiteEvent[]
): Promise<void> {
	const { on: today } = latestOf(ctx, await getLake(ctx, lakeId));
	const issues = events.flatMap((event, at) =>
		daysOf(event)
			.filter(([, on]) => on > today)
			.map(([field, on]) => ({
				code: 'custom' as const,
				path: ['events', at, field],
				message: `${on} is after today at the lake, ${today}; store it once it has happened`,
				input: on
			}))
	);
	if (issues.length > 0) throw new z.ZodError(issues);
}

function daysOf(event: SiteEvent): [string, IsoDate][] {
	const refrozeOn = event.kind === 'reopened' ? event.refrozeOn : null;
	return [
		['on', event.on],
		...(refrozeOn === null ? [] : [['refrozeOn', refrozeOn] as [string, IsoDate]])
	];
}
