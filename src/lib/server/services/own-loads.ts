import type { LoadCase } from '#lib/model/load-case.ts';
import type { Context } from '../context.ts';
import * as storage from '../storage/own-loads.ts';
import { chartUse, standardLoads } from './charts.ts';
import { newId } from './ids.ts';
import { getLake } from './lakes.ts';
import type { LoadChange, NewLoad } from './load-input.ts';
import { NotFound } from './not-found.ts';

export class LoadNotFound extends NotFound {
	constructor(lakeId: string, id: string) {
		super('load', id, ` of lake "${lakeId}"`);
	}
}

/** The standard loads, then the lake's own. @throws LakeNotFound */
export async function listLoads(ctx: Context, lakeId: string): Promise<LoadCase[]> {
	return [...standardLoads, ...(await listOwnLoads(ctx, lakeId))];
}

/** @throws LakeNotFound */
export async function listOwnLoads(ctx: Context, lakeId: string): Promise<LoadCase[]> {
	await getLake(ctx, lakeId);
	return (await storage.listOwnLoadRows(ctx.db, lakeId)).map(toLoadCase);
}

/** @throws LakeNotFound */
export async function addLoad(ctx: Context, lakeId: string, load: NewLoad): Promise<LoadCase> {
	await getLake(ctx, lakeId);
	const id = newId('own');
	const created_at = ctx.now().toISOString();
	await storage.insertOwnLoad(ctx.db, { id, lake_id: lakeId, created_at, ...toColumns(load) });
	return { id, ...load };
}

/** @throws LakeNotFound; LoadNotFound for a load that the lake doesn't have. */
export async function getLoad(ctx: Context, lakeId: string, id: string): Promise<LoadCase> {
	const load = (await listLoads(ctx, lakeId)).find((each) => each.id === id);
	if (!load) throw new LoadNotFound(lakeId, id);
	return load;
}

/** What is absent stays. @throws LoadNotFound; the standard loads cannot be changed. */
export async function updateLoad(
	ctx: Context,
	lakeId: string,
	id: string,
	change: LoadChange
): Promise<LoadCase> {
	const load = { ...(await requireLoad(ctx, lakeId, id)), ...change };
	await storage.updateOwnLoadRow(ctx.db, id, toColumns(load));
	return load;
}

/** Hides the load until {@link restoreLoad}. @throws LoadNotFound */
export async function deleteLoad(ctx: Context, lakeId: string, id: string): Promise<void> {
	await requireLoad(ctx, lakeId, id);
	await storage.updateOwnLoadRow(ctx.db, id, { deleted_at: ctx.now().toISOString() });
}

/** Takes a deletion back. @throws LoadNotFound when there never was such a load. */
export async function restoreLoad(ctx: Context, lakeId: string, id: string): Promise<LoadCase> {
	await getLake(ctx, lakeId);
	const row = await storage.findOwnLoadRow(ctx.db, lakeId, id);
	if (!row) throw new LoadNotFound(lakeId, id);
	await storage.updateOwnLoadRow(ctx.db, id, { deleted_at: null });
	return toLoadCase(row);
}

async function requireLoad(ctx: Context, lakeId: string, id: string): Promise<LoadCase> {
	await getLake(ctx, lakeId);
	const row = await storage.findOwnLoadRow(ctx.db, lakeId, id);
	if (!row || row.deleted_at !== null) throw new LoadNotFound(lakeId, id);
	return toLoadCase(row);
}

function toColumns(load: NewLoad): storage.OwnLoadChange {
	const { name, mass_kg, use, parked_h, trailer, spacing_m } = load;
	return {
		name,
		mass_kg,
		use,
		parked_h,
		wet_cracks: load.wetCracks,
		crosses_current: load.current ? 1 : 0,
		in_group: load.group ? 1 : 0,
		trailer_kg: trailer?.mass_kg ?? null,
		trailer_apart_m: trailer?.apart_m ?? null,
		how_many: load.count,
		spacing_m,
		deleted_at: null
	};
}

function toLoadCase(row: storage.OwnLoadRow): LoadCase {
	const { id, name, mass_kg, parked_h, wet_cracks, trailer_kg, spacing_m } = row;
	return {
		id,
		name,
		mass_kg,
		use: chartUse.nullable().parse(row.use),
		parked_h,
		wetCracks: wet_cracks,
		current: row.crosses_current === 1,
		group: row.in_group === 1,
		trailer: trailer_kg === null ? null : { mass_kg: trailer_kg, apart_m: row.trailer_apart_m },
		count: row.how_many,
		spacing_m
	};
}
