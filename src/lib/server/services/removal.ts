import { z } from 'zod';
import { winterSpan, type WinterId } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { readRemoval, writeRemoval, type RemovalRecord } from '../storage/removal.ts';
import { isoDate, orUnknown } from './fields.ts';
import { getLake } from './lakes.ts';
import { listLoads } from './own-loads.ts';

export type { RemovalRecord } from '../storage/removal.ts';

export const LONGEST_LEAD_d = 60;

const lead = z.strictObject({
	load: z.string().min(1).max(80),
	lead_d: z
		.int('must be whole days')
		.min(0, 'must be 0 days or more')
		.max(LONGEST_LEAD_d, `must be ${LONGEST_LEAD_d} days at most`)
});

const shape = z.strictObject({
	/** By when everything has to be off, by the local rule; none without it. */
	removalOn: orUnknown(isoDate),
	/** Days that a load takes to get free; usual ones without. */
	leads: z.array(lead).max(200).default([])
});

/** The removal date of a winter, which stands in the address, and the leads of the lake's loads. */
export const removalInput = shape.meta({ id: 'RemovalInput' });

/** The same, with the day held to lie in its winter and each lead to be of a load that is there. */
export function removalInputFor(winter: WinterId, loads: ReadonlySet<string>) {
	return removalInput.superRefine(({ removalOn, leads }, check) => {
		const [first, last] = winterSpan(winter);
		const report = (path: PropertyKey[], message: string) =>
			check.addIssue({ code: 'custom', path, message });
		if (removalOn !== null && (removalOn < first || removalOn > last))
			report(
				['removalOn'],
				`must lie in the winter ${winter}, ${first} to ${last}, got ${removalOn}`
			);
		const seen = new Set<string>();
		leads.forEach(({ load }, index) => {
			if (!loads.has(load)) report(['leads', index, 'load'], `names no load of this lake: ${load}`);
			if (seen.has(load)) report(['leads', index, 'load'], `has ${load} twice`);
			seen.add(load);
		});
	});
}

/** @throws LakeNotFound */
export async function getRemoval(
	ctx: Context,
	lakeId: string,
	winter: WinterId
): Promise<RemovalRecord> {
	await getLake(ctx, lakeId);
	const record = await readRemoval(ctx.db, lakeId, winter);
	const loads = await loadIds(ctx, lakeId);
	return { ...record, leads: record.leads.filter(({ load }) => loads.has(load)) };
}

/** Replaces the date of the winter and all leads. @throws LakeNotFound */
export async function saveRemoval(
	ctx: Context,
	lakeId: string,
	winter: WinterId,
	record: RemovalRecord
): Promise<RemovalRecord> {
	await getLake(ctx, lakeId);
	await writeRemoval(ctx.db, lakeId, winter, record);
	return getRemoval(ctx, lakeId, winter);
}

/** The loads that a lead can be of. @throws LakeNotFound */
export async function loadIds(ctx: Context, lakeId: string): Promise<Set<string>> {
	return new Set((await listLoads(ctx, lakeId)).map(({ id }) => id));
}
