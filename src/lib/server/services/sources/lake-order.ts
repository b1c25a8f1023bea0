import { z } from 'zod';
import type { Context } from '../../context.ts';
import { readIssueTimes } from '../../storage/forecasts.ts';
import { forgetBrought } from '../../storage/forget-brought.ts';
import { markAllForJoining } from '../../storage/joined-days.ts';
import {
	listAllUses,
	listLakeSourceRows,
	readCsvPosition,
	writeTrust,
	type LakeSourceRow
} from '../../storage/lake-sources.ts';
import { joinChanged } from '../joining.ts';
import { getLake, type LakeRecord } from '../lakes.ts';
import { nudgeSchedule } from '../refresh/nudge.ts';
import { lastObservedOf } from './last-observed.ts';
import { getSource, listSources, type SourceRecord } from './sources.ts';
import { stationFacts, type StationFacts } from './station.ts';

/** What stands for what people imported, in the order of trust. */
export const CSV = 'csv';

const use = z.strictObject({
	source: z.string().min(1).max(80),
	/** Temperatures are brought to the lake's elevation by the standard atmosphere's 6.5 K/km. */
	correctsElevation: z.boolean().default(true),
	/** The station to ask, where the source's address has `{station}`. */
	station: z.string().trim().min(1).max(120).nullable().default(null)
});

export const lakeOrderInput = z
	.strictObject({
		/** The most trusted first; files that people import are `csv`, first where they are not named. */
		order: z.array(use).max(20)
	})
	.superRefine(({ order }, check) => {
		const seen = new Set<string>();
		order.forEach(({ source }, index) => {
			const message = `"${source}" is named twice`;
			if (seen.has(source)) check.addIssue({ code: 'custom', path: ['order', index], message });
			seen.add(source);
		});
	})
	.meta({ id: 'LakeOrderInput' });

export type LakeOrderInput = z.output<typeof lakeOrderInput>;

/** One origin of a lake's weather, as a person sees it. */
export type LakeOrigin =
	| { kind: 'csv' }
	| ({
			kind: 'source';
			source: string;
			name: string;
			isOn: boolean;
			attribution: string | null;
			attributionUrl: string | null;
			correctsElevation: boolean;
			station: string | null;
			/** `null` until an answer has told. */
			hasPrecipitation: boolean | null;
			/** End of the last hour or day with a temperature that it brought. */
			lastObservedAt: Date | null;
			forecastIssuedAt: Date | null;
			/** When it is asked again; `null`: at the next round. */
			nextAt: Date | null;
	  } & StationFacts);

/** Where a lake's weather comes from, the most trusted first. @throws LakeNotFound */
export async function getLakeOrder(ctx: Context, lakeId: string): Promise<LakeOrigin[]> {
	const lake = await getLake(ctx, lakeId);
	const rows = await listLakeSourceRows(ctx.db, lakeId);
	const csvPosition = await readCsvPosition(ctx.db, lakeId);
	const sources = new Map((await listSources(ctx)).map((source) => [source.id, source]));
	const ids = rows.map(({ id }) => id);
	const observed = await lastObservedOf(ctx, lake.timeZone, ids);
	const issued = await readIssueTimes(ctx.db, ids, ctx.now());
	const described = rows.map((row) => ({
		position: row.position,
		origin: {
			...originOf(row, lake, sources.get(row.source_id)),
			lastObservedAt: observed.get(row.id) ?? null,
			forecastIssuedAt: issued.get(row.id) ?? null
		}
	}));
	const before = described.filter(({ position }) => position < csvPosition);
	const after = described.filter(({ position }) => position >= csvPosition);
	const origins = (of: typeof described) => of.map(({ origin }): LakeOrigin => origin);
	return [...origins(before), { kind: 'csv' }, ...origins(after)];
}

/** Replaces the order of trust and joins the weather anew. @throws LakeNotFound, SourceNotFound */
export async function setLakeOrder(
	ctx: Context,
	lakeId: string,
	{ order }: LakeOrderInput
): Promise<LakeOrigin[]> {
	await getLake(ctx, lakeId);
	const used = order.filter(({ source }) => source !== CSV);
	for (const { source } of used) await getSource(ctx, source);
	const csvPosition = Math.max(
		0,
		order.findIndex(({ source }) => source === CSV)
	);
	const rows = used.map(({ source, correctsElevation, station }) => ({
		sourceId: source,
		correctsElevation: correctsElevation ? (1 as const) : (0 as const),
		station
	}));
	await ctx.db.transaction().execute(async (tx) => {
		const before = await listAllUses(tx, lakeId);
		await writeTrust(tx, lakeId, rows, csvPosition);
		const moved = before.filter(({ source_id, station }) =>
			rows.some((row) => row.sourceId === source_id && row.station !== station)
		);
		// What it brought before is another station's.
		await forgetBrought(tx, moved);
		await markAllForJoining(tx, lakeId);
	});
	await joinChanged(ctx, lakeId);
	nudgeSchedule(ctx);
	return getLakeOrder(ctx, lakeId);
}

function originOf(row: LakeSourceRow, lake: LakeRecord, record: SourceRecord | undefined) {
	return {
		kind: 'source' as const,
		source: row.source_id,
		name: record?.name ?? row.source_id,
		isOn: record?.isOn ?? false,
		attribution: record?.source?.terms.attribution ?? null,
		attributionUrl: record?.source?.terms.attributionUrl ?? null,
		correctsElevation: row.corrects_elevation === 1,
		station: row.station,
		hasPrecipitation: row.has_precipitation === null ? null : row.has_precipitation === 1,
		nextAt: row.next_at === null ? null : new Date(row.next_at),
		...stationFacts(row, lake)
	};
}
