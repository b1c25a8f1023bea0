import { z } from 'zod';
import { winterOf, winterSpan, addDays, type WinterId } from '#lib/model/calendar.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { Context } from '../context.ts';
import { listWeatherMonths } from '../storage/weather-days.ts';
import {
	listKeptWinters,
	markWinter,
	readSiteWinter,
	replaceSiteWinter,
	writeSiteWinter
} from '../storage/winters.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { between, isoDate, orUnknown } from './fields.ts';
import { joinChanged } from './joining.ts';
import { NotFound } from './not-found.ts';
import { winterDaysOf } from './site-records.ts';
import { refuseAheadEvents } from './not-ahead.ts';
import { getSite } from './sites.ts';
import { nudgeTelling } from './telling/nudge.ts';

export class WinterNotFound extends NotFound {
	constructor(winter: WinterId) {
		super('winter', winter, ' on record');
	}
}

const eventInput = z
	.discriminatedUnion('kind', [
		z.strictObject({
			kind: z.literal('reopened'),
			on: isoDate,
			/** Unknown: it has not frozen again, or nobody saw when. */
			refrozeOn: orUnknown(isoDate)
		}),
		z.strictObject({ kind: z.literal('cleared'), on: isoDate, snow_m: between(0, 10, 'm') }),
		z.strictObject({
			kind: z.literal('packed'),
			on: isoDate,
			density_kg_m3: orUnknown(between(50, 900, 'kg/m³'))
		}),
		z.strictObject({ kind: z.literal('pumped'), on: isoDate, water_m: between(0, 5, 'm') })
	])
	.meta({ id: 'SiteEvent' });

const shape = z.strictObject({
	freezeUpOn: isoDate.nullable(),
	freezeUpBy: orUnknown(isoDate),
	iceOutOn: orUnknown(isoDate),
	events: z.array(eventInput).max(500).default([])
});

/** A winter's record, without the winter itself, which stands in the address. */
export const winterInput = shape.superRefine(reportOrder).meta({ id: 'WinterInput' });

export type WinterInput = z.output<typeof winterInput>;

/** The same, with every day held to lie in its winter. */
export function winterInputFor(winter: WinterId) {
	return winterInput.superRefine((record, check) => {
		const [first, last] = winterSpan(winter);
		// High lakes lose their ice after the winter's last day.
		const latest = { iceOutOn: addDays(last, 60) };
		for (const [field, on] of datedFields(record)) {
			const end = field === 'iceOutOn' ? latest.iceOutOn : last;
			if (on !== null && (on < first || on > end)) {
				const message = `must lie in the winter ${winter}, ${first} to ${end}, got ${on}`;
				check.addIssue({ code: 'custom', path: field.split('.').map(asIndex), message });
			}
		}
	});
}

/** @throws LakeNotFound, SiteNotFound */
export async function getSiteWinter(
	ctx: Context,
	lakeId: string,
	site: string,
	winter: WinterId
): Promise<SiteWinter> {
	await getSite(ctx, lakeId, site);
	return readSiteWinter(ctx.db, { lakeId, site }, winter);
}

/**
 * Replaces the whole record of `record.winter`.
 * @throws LakeNotFound, SiteNotFound; ZodError on days of freeze-up or ice-out of a track, which has none,
 * and on events that are still to come
 */
export async function saveSiteWinter(
	ctx: Context,
	lakeId: string,
	site: string,
	record: SiteWinter
): Promise<SiteWinter> {
	const { kind } = await getSite(ctx, lakeId, site);
	if (kind === 'track') trackDates.parse(record);
	await refuseAheadEvents(ctx, lakeId, record.events);
	await writeSiteWinter(ctx.db, { lakeId, site }, record);
	return readSiteWinter(ctx.db, { lakeId, site }, record.winter);
}

/** Other processes that write at the same moment make it try again. */
const TRIES = 5;

/**
 * Replaces the record of a winter by what `change` makes of the one that stands, so that nothing is lost
 * of what another stores at the same moment. Where `change` makes `null`, nothing is written.
 * @throws LakeNotFound, SiteNotFound; ZodError on days of freeze-up or ice-out of a track, which has none
 */
export async function changeSiteWinter(
	ctx: Context,
	lakeId: string,
	site: string,
	winter: WinterId,
	change: (stands: SiteWinter) => SiteWinter | null
): Promise<SiteWinter | null> {
	const { kind } = await getSite(ctx, lakeId, site);
	return oneAtATime(ctx, lakeId, async () => {
		for (let tries = 1; tries <= TRIES; tries++) {
			const stands = await readSiteWinter(ctx.db, { lakeId, site }, winter);
			const record = change(stands);
			if (record === null) return null;
			if (kind === 'track') trackDates.parse(record);
			if (await replaceSiteWinter(ctx.db, { lakeId, site }, stands, record)) return record;
		}
		throw new Error(`winter ${winter} of "${lakeId}" was changed by others, ${TRIES} times over`);
	});
}

/**
 * Takes freeze-up, ice-out and events of a winter out of use until {@link restoreSiteWinter}, or until
 * others are stored. Its readings stay.
 * @throws LakeNotFound, SiteNotFound, WinterNotFound
 */
export async function deleteSiteWinter(
	ctx: Context,
	lakeId: string,
	site: string,
	winter: WinterId
): Promise<void> {
	await getSite(ctx, lakeId, site);
	const kept = await listKeptWinters(ctx.db, { lakeId, site });
	if (!kept.includes(winter)) throw new WinterNotFound(winter);
	await markWinter(ctx.db, { lakeId, site }, winter, ctx.now());
	nudgeTelling(ctx, lakeId);
}

/** Takes a deletion back. @throws LakeNotFound, SiteNotFound, WinterNotFound */
export async function restoreSiteWinter(
	ctx: Context,
	lakeId: string,
	site: string,
	winter: WinterId
): Promise<SiteWinter> {
	await getSite(ctx, lakeId, site);
	if (!(await markWinter(ctx.db, { lakeId, site }, winter, null))) throw new WinterNotFound(winter);
	nudgeTelling(ctx, lakeId);
	return readSiteWinter(ctx.db, { lakeId, site }, winter);
}

/** Winters with a recorded freeze-up, weather or a reading, newest first. */
export async function listWinters(ctx: Context, lakeId: string, site: string): Promise<WinterId[]> {
	const record = await getSite(ctx, lakeId, site);
	await joinChanged(ctx, lakeId);
	const known = await winterDaysOf(ctx, lakeId, record);
	const months = await listWeatherMonths(ctx.db, lakeId);
	const days = [...months, ...known.readingDays];
	return [...new Set([...known.winters, ...days.map(winterOf)])].toSorted().toReversed();
}

const notOfTrack = z.null('must be left out: a track has those of the site that it was made on');

const trackDates = z.looseObject({
	freezeUpOn: notOfTrack,
	freezeUpBy: notOfTrack,
	iceOutOn: notOfTrack
});

function reportOrder(record: z.output<typeof shape>, check: z.RefinementCtx): void {
	const { freezeUpOn, freezeUpBy, iceOutOn, events } = record;
	const report = (path: PropertyKey[], message: string) =>
		check.addIssue({ code: 'custom', path, message });
	if (freezeUpBy !== null && (freezeUpOn === null || freezeUpBy < freezeUpOn)) {
		report(['freezeUpBy'], 'must not be before freezeUpOn, the first day it may have been');
	}
	if (iceOutOn !== null && (freezeUpOn === null || iceOutOn <= (freezeUpBy ?? freezeUpOn))) {
		report(['iceOutOn'], 'must be after freeze-up');
	}
	events.forEach((event, index) => {
		if (freezeUpOn !== null && event.on < freezeUpOn) {
			report(['events', index, 'on'], `must not be before freeze-up on ${freezeUpOn}`);
		}
		if (event.kind === 'reopened' && event.refrozeOn !== null && event.refrozeOn <= event.on) {
			report(['events', index, 'refrozeOn'], 'must be after the day it opened');
		}
	});
}

function datedFields(record: WinterInput): [field: string, on: string | null][] {
	const { freezeUpOn, freezeUpBy, iceOutOn, events } = record;
	return [
		['freezeUpOn', freezeUpOn],
		['freezeUpBy', freezeUpBy],
		['iceOutOn', iceOutOn],
		...events.flatMap((event, index): [string, string | null][] => [
			[`events.${index}.on`, event.on],
			[`events.${index}.refrozeOn`, event.kind === 'reopened' ? event.refrozeOn : null]
		])
	];
}

function asIndex(part: string): string | number {
	return /^\d+$/.test(part) ? Number(part) : part;
}
