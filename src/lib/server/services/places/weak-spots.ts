import { z } from 'zod';
import { placeKey } from '#lib/model/places/place-name.ts';
import { WEAK_SPOT_KINDS, type WeakSpot } from '#lib/model/places/weak-spot.ts';
import type { Context } from '../../context.ts';
import * as storage from '../../storage/weak-spots.ts';
import { between, freeText, isoDate, name, orUnknown } from '../fields.ts';
import { newId } from '../ids.ts';
import { getLake } from '../lakes.ts';
import { NotFound } from '../not-found.ts';

export class WeakSpotNotFound extends NotFound {
	constructor(lakeId: string, id: string) {
		super('weak spot', id, ` of lake "${lakeId}"`);
	}
}

/** More than a lake's list or plot can be read with; a slip of a file is caught. */
export const MOST_SPOTS = 500;

export const latitude = between(-90, 90, 'degrees north');
export const longitude = between(-180, 180, 'degrees east');

/** For an input with a position: half of one says nothing. */
export function refuseHalfPosition(
	place: { latitude: number | null; longitude: number | null },
	check: z.RefinementCtx
): void {
	if ((place.latitude === null) === (place.longitude === null)) return;
	const lacking = place.latitude === null ? 'latitude' : 'longitude';
	const message = `must be there too where the ${lacking === 'latitude' ? 'longitude' : 'latitude'} is`;
	check.addIssue({ code: 'custom', path: [lacking], message });
}

export const weakSpotInput = z
	.strictObject({
		name,
		kind: z.enum(WEAK_SPOT_KINDS),
		latitude: orUnknown(latitude),
		longitude: orUnknown(longitude),
		checkedOn: orUnknown(isoDate),
		remark: freeText(2000)
	})
	.superRefine(refuseHalfPosition)
	.meta({ id: 'WeakSpotInput' });

export type NewWeakSpot = z.output<typeof weakSpotInput>;

/** Stored, or what stands in the way: two places of one name could not be told apart. */
export type StoredSpot =
	| { status: 'stored'; spot: WeakSpot }
	| { status: 'nameTaken'; name: string }
	| { status: 'tooMany' };

/** In the order they were entered. @throws LakeNotFound */
export async function listWeakSpots(ctx: Context, lakeId: string): Promise<WeakSpot[]> {
	await getLake(ctx, lakeId);
	return (await storage.listWeakSpotRows(ctx.db, lakeId)).map(toSpot);
}

/** @throws WeakSpotNotFound */
export async function getWeakSpot(ctx: Context, lakeId: string, id: string): Promise<WeakSpot> {
	return toSpot(await requireSpot(ctx, lakeId, id));
}

/** @throws LakeNotFound */
export async function addWeakSpot(
	ctx: Context,
	lakeId: string,
	input: NewWeakSpot
): Promise<StoredSpot> {
	const spots = await listWeakSpots(ctx, lakeId);
	if (spots.length >= MOST_SPOTS) return { status: 'tooMany' };
	if (isTaken(spots, input.name)) return { status: 'nameTaken', name: input.name };
	const row = newSpotRow(ctx, lakeId, input);
	await storage.insertWeakSpots(ctx.db, [row]);
	return { status: 'stored', spot: toSpot(row) };
}

/** Replaces the weak spot; readings that had its old name get the new one. @throws WeakSpotNotFound */
export async function updateWeakSpot(
	ctx: Context,
	lakeId: string,
	id: string,
	input: NewWeakSpot
): Promise<StoredSpot> {
	const before = await requireSpot(ctx, lakeId, id);
	const others = (await listWeakSpots(ctx, lakeId)).filter((spot) => spot.id !== id);
	if (isTaken(others, input.name)) return { status: 'nameTaken', name: input.name };
	const change = toColumns(input);
	if (before.name === input.name) await storage.updateWeakSpotRow(ctx.db, id, change);
	else await storage.renameWeakSpot(ctx.db, before, change);
	return { status: 'stored', spot: toSpot({ ...before, ...change }) };
}

/** Hides it until {@link restoreWeakSpot}; its readings and routes stay. @throws WeakSpotNotFound */
export async function deleteWeakSpot(ctx: Context, lakeId: string, id: string): Promise<void> {
	await requireSpot(ctx, lakeId, id);
	await storage.updateWeakSpotRow(ctx.db, id, { deleted_at: ctx.now().toISOString() });
}

/** Takes a deletion back. @throws WeakSpotNotFound when there never was such a one. */
export async function restoreWeakSpot(
	ctx: Context,
	lakeId: string,
	id: string
): Promise<StoredSpot> {
	const spots = await listWeakSpots(ctx, lakeId);
	const row = await storage.findWeakSpotRow(ctx.db, lakeId, id);
	if (!row) throw new WeakSpotNotFound(lakeId, id);
	const others = spots.filter((spot) => spot.id !== id);
	if (isTaken(others, row.name)) return { status: 'nameTaken', name: row.name };
	await storage.updateWeakSpotRow(ctx.db, id, { deleted_at: null });
	return { status: 'stored', spot: toSpot(row) };
}

export function isTaken(spots: readonly WeakSpot[], spotName: string): boolean {
	return spots.some((spot) => placeKey(spot.name) === placeKey(spotName));
}

/** A row for a weak spot that is not stored yet. */
export function newSpotRow(ctx: Context, lakeId: string, input: NewWeakSpot): storage.WeakSpotRow {
	const created_at = ctx.now().toISOString();
	return {
		id: newId('w'),
		lake_id: lakeId,
		created_at,
		deleted_at: null,
		...toColumns(input)
	};
}

export function toSpot(row: storage.WeakSpotRow): WeakSpot {
	const { id, name, kind, latitude, longitude, checked_on, remark } = row;
	const position = latitude === null || longitude === null ? null : { latitude, longitude };
	return { id, name, kind, position, checkedOn: checked_on, remark };
}

function toColumns({ name, kind, latitude, longitude, checkedOn, remark }: NewWeakSpot) {
	return { name, kind, latitude, longitude, checked_on: checkedOn, remark };
}

async function requireSpot(ctx: Context, lakeId: string, id: string): Promise<storage.WeakSpotRow> {
	await getLake(ctx, lakeId);
	const row = await storage.findWeakSpotRow(ctx.db, lakeId, id);
	if (!row || row.deleted_at !== null) throw new WeakSpotNotFound(lakeId, id);
	return row;
}
