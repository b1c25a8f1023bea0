import { z } from 'zod';
import type { IsoDate } from '#lib/model/calendar.ts';
import { distance_m } from '#lib/model/distance.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { ChartSet } from '#lib/model/load-case.ts';
import type { Context } from '../context.ts';
import { markAllForJoining } from '../storage/joined-days.ts';
import { forgetBrought } from '../storage/forget-brought.ts';
import { listAllUses } from '../storage/lake-sources.ts';
import * as storage from '../storage/lakes.ts';
import { between, name, orUnknown } from './fields.ts';
import { changeTimeZone } from './hourly-days.ts';
import { newId, slug } from './ids.ts';
import { joinChanged } from './joining.ts';
import { isTimeZone, timeZoneAt } from './local-day.ts';
import { NotFound } from './not-found.ts';

export interface LakeRecord extends LakeFacts {
	id: string;
	name: string;
	timeZone: string;
	chartSet: ChartSet;
	isInvented: boolean;
	/** The day that an invented lake calls today, so that it always shows the same. */
	today: IsoDate | null;
}

export class LakeNotFound extends NotFound {
	constructor(id: string) {
		super('lake', id);
	}
}

const facts = {
	name,
	latitude: between(-90, 90, 'degrees north'),
	longitude: between(-180, 180, 'degrees east'),
	elevation_m: between(-500, 9000, 'm').nullable(),
	area_km2: between(0, 500_000, 'km²').nullable(),
	meanDepth_m: between(0, 2000, 'm').nullable(),
	water: z.enum(['lake', 'river', 'reservoir']),
	timeZone: z.string().refine(isTimeZone, 'must be a time zone such as Europe/Helsinki').nullable(),
	chartSet: z.enum(['strict', 'common'])
};

export const newLake = z
	.strictObject({
		...facts,
		elevation_m: orUnknown(facts.elevation_m),
		area_km2: orUnknown(facts.area_km2),
		meanDepth_m: orUnknown(facts.meanDepth_m),
		/** Unknown: the time zone of the position. */
		timeZone: orUnknown(facts.timeZone),
		chartSet: facts.chartSet.default('strict')
	})
	.meta({ id: 'NewLake' });

export const lakeChange = z
	.strictObject({
		name: facts.name.exactOptional(),
		latitude: facts.latitude.exactOptional(),
		longitude: facts.longitude.exactOptional(),
		elevation_m: facts.elevation_m.exactOptional(),
		area_km2: facts.area_km2.exactOptional(),
		meanDepth_m: facts.meanDepth_m.exactOptional(),
		water: facts.water.exactOptional(),
		timeZone: facts.timeZone.exactOptional(),
		chartSet: facts.chartSet.exactOptional()
	})
	.meta({ id: 'LakeChange' });

export type NewLake = z.output<typeof newLake>;
export type LakeChange = z.output<typeof lakeChange>;

/** A page of its own stands at these addresses. */
export const RESERVED_IDS = new Set(['new']);

export async function listLakes({ db }: Context): Promise<LakeRecord[]> {
	return (await storage.listLakeRows(db)).map(toRecord);
}

/** @throws LakeNotFound when there is no such lake, or it is deleted. */
export async function getLake({ db }: Context, id: string): Promise<LakeRecord> {
	const row = await storage.findLakeRow(db, id);
	if (!row || row.deleted_at !== null) throw new LakeNotFound(id);
	return toRecord(row);
}

/** A lake that is made at an instant, as it is stored. An invented one brings the day that it calls today. */
export function newLakeRow(
	id: string,
	lake: NewLake,
	invented: { today: IsoDate | null } | null,
	at: Date
): storage.LakeRow {
	return {
		id,
		name: lake.name,
		latitude: lake.latitude,
		longitude: lake.longitude,
		elevation_m: lake.elevation_m,
		area_km2: lake.area_km2,
		mean_depth_m: lake.meanDepth_m,
		water: lake.water,
		time_zone: lake.timeZone ?? timeZoneAt(lake.latitude, lake.longitude),
		chart_set: lake.chartSet,
		is_invented: invented ? 1 : 0,
		today: invented?.today ?? null,
		weather_revision: 0,
		created_at: at.toISOString(),
		deleted_at: null
	};
}

export async function createLake(
	{ db, now }: Context,
	lake: NewLake,
	invented: { today: IsoDate } | null = null
): Promise<LakeRecord> {
	const row = newLakeRow(await freeId(db, lake.name), lake, invented, now());
	await storage.insertLake(db, row);
	return toRecord(row);
}

/** What is absent from `change` stays. A new time zone builds the days from the stored hours again. */
export async function updateLake(
	ctx: Context,
	id: string,
	change: LakeChange
): Promise<LakeRecord> {
	const before = await getLake(ctx, id);
	const { meanDepth_m, timeZone, chartSet, ...same } = { ...before, ...change };
	const { latitude, longitude } = same;
	await ctx.db.transaction().execute(async (tx) => {
		await storage.updateLakeRow(tx, id, {
			name: same.name,
			latitude,
			longitude,
			elevation_m: same.elevation_m,
			area_km2: same.area_km2,
			mean_depth_m: meanDepth_m,
			water: same.water,
			chart_set: chartSet
		});
		// What sources brought is another place's weather; they are asked anew. Imported files stay.
		if (distance_m(before, same) > SAME_PLACE_M) {
			await forgetBrought(tx, await listAllUses(tx, id));
		}
	});
	const zone = timeZone ?? timeZoneAt(latitude, longitude);
	if (zone !== before.timeZone) await changeTimeZone(ctx, id, zone);
	// The correction of a source's temperatures rests on the lake's elevation.
	if (same.elevation_m !== before.elevation_m) await markAllForJoining(ctx.db, id);
	await joinChanged(ctx, id);
	return getLake(ctx, id);
}

/** A position put right by less than this has the same weather. Our choice. */
const SAME_PLACE_M = 2000;

/** Hides the lake and all that belongs to it until {@link restoreLake}. */
export async function deleteLake(ctx: Context, id: string): Promise<void> {
	await getLake(ctx, id);
	await storage.updateLakeRow(ctx.db, id, { deleted_at: ctx.now().toISOString() });
}

/** Takes a deletion back. @throws LakeNotFound when there never was such a lake. */
export async function restoreLake({ db }: Context, id: string): Promise<LakeRecord> {
	const row = await storage.findLakeRow(db, id);
	if (!row) throw new LakeNotFound(id);
	await storage.updateLakeRow(db, id, { deleted_at: null });
	return toRecord(row);
}

async function freeId(db: Context['db'], lakeName: string): Promise<string> {
	const plain = slug(lakeName);
	const isTaken = RESERVED_IDS.has(plain) || (await storage.findLakeRow(db, plain)) !== undefined;
	return isTaken ? newId(plain, 6) : plain;
}

function toRecord(row: storage.LakeRow): LakeRecord {
	return {
		id: row.id,
		name: row.name,
		latitude: row.latitude,
		longitude: row.longitude,
		elevation_m: row.elevation_m,
		area_km2: row.area_km2,
		meanDepth_m: row.mean_depth_m,
		water: row.water,
		timeZone: row.time_zone,
		chartSet: row.chart_set,
		isInvented: row.is_invented === 1,
		today: row.today
	};
}
