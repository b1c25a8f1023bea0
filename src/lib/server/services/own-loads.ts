import { z } from 'zod';
import type { LoadCase } from '#lib/model/load-case.ts';
import type { Context } from '../context.ts';
import * as storage from '../storage/own-loads.ts';
import { chartUse, standardLoads } from './charts.ts';
import { between, name } from './fields.ts';
import { newId } from './ids.ts';
import { getLake } from './lakes.ts';
import { NotFound } from './not-found.ts';

export class LoadNotFound extends NotFound {
	constructor(lakeId: string, id: string) {
		super('load', id, ` of lake "${lakeId}"`);
	}
}

export const loadInput = z
	.strictObject({
		name,
		mass_kg: between(1, 1_000_000, 'kg'),
		use: chartUse.nullable().default(null),
		parked_h: between(0, 8760, 'h').default(0),
		wetCracks: z.union([z.literal(0), z.literal(1), z.literal(2)]).default(0),
		current: z.boolean().default(false),
		group: z.boolean().default(false)
	})
	.meta({ id: 'LoadInput' });

export type NewLoad = z.output<typeof loadInput>;

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

/** Replaces the load. @throws LoadNotFound; the standard loads cannot be changed. */
export async function updateLoad(
	ctx: Context,
	lakeId: string,
	id: string,
	load: NewLoad
): Promise<LoadCase> {
	await requireLoad(ctx, lakeId, id);
	await storage.updateOwnLoadRow(ctx.db, id, toColumns(load));
	return { id, ...load };
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

async function requireLoad(ctx: Context, lakeId: string, id: string): Promise<void> {
	await getLake(ctx, lakeId);
	const row = await storage.findOwnLoadRow(ctx.db, lakeId, id);
	if (!row || row.deleted_at !== null) throw new LoadNotFound(lakeId, id);
}

function toColumns(load: NewLoad): storage.OwnLoadChange {
	const { name, mass_kg, use, parked_h } = load;
	return {
		name,
		mass_kg,
		use,
		parked_h,
		wet_cracks: load.wetCracks,
		crosses_current: load.current ? 1 : 0,
		in_group: load.group ? 1 : 0,
		deleted_at: null
	};
}

function toLoadCase(row: storage.OwnLoadRow): LoadCase {
	const { id, name, mass_kg, parked_h, wet_cracks } = row;
	return {
		id,
		name,
		mass_kg,
		use: chartUse.nullable().parse(row.use),
		parked_h,
		wetCracks: wet_cracks,
		current: row.crosses_current === 1,
		group: row.in_group === 1
	};
}
