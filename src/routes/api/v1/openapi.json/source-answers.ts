import { z } from 'zod';
import { FAULT_CODES } from '#lib/server/services/sources/fault-codes.ts';
import { weatherSource } from '#lib/server/services/sources/input.ts';
import type { LakeOrigin } from '#lib/server/services/sources/lake-order.ts';
import type { LogEntry } from '#lib/server/services/sources/log.ts';
import type { SourceRecord } from '#lib/server/services/sources/sources.ts';
import type { RefreshState } from '#lib/server/services/refresh/refresh-lake.ts';

/** What the API answers of weather sources, as JSON writes it: instants are ISO text in UTC. */
export type Json<Value> = Value extends Date
	? string
	: Value extends readonly (infer Item)[]
		? Json<Item>[]
		: Value extends object
			? { [Key in keyof Value]: Json<Value[Key]> }
			: Value;

const instant = z.string().meta({ format: 'date-time' });
const orNull = z.number().nullable();

export const source = z
	.object({
		id: z.string(),
		name: z.string(),
		source: weatherSource.nullable(),
		problem: z.string().nullable().describe('Why what is stored cannot be read'),
		isOn: z.boolean(),
		hasKey: z.boolean().describe('The key itself is never told'),
		createdAt: instant,
		callsToday: z.int(),
		lastSuccessAt: instant.nullable(),
		failures: z.int().describe('In a row'),
		waitsUntilAt: instant.nullable()
	})
	.meta({ id: 'Source' }) satisfies z.ZodType<Json<SourceRecord>>;

const origin = z.discriminatedUnion('kind', [
	z.object({ kind: z.literal('csv') }),
	z.object({
		kind: z.literal('source'),
		source: z.string(),
		name: z.string(),
		isOn: z.boolean(),
		attribution: z.string().nullable(),
		attributionUrl: z.string().nullable(),
		correctsElevation: z.boolean(),
		station: z.string().nullable(),
		hasPrecipitation: z.boolean().nullable(),
		lastObservedAt: instant.nullable(),
		forecastIssuedAt: instant.nullable(),
		nextAt: instant.nullable(),
		stationName: z.string().nullable(),
		distance_m: orNull,
		stationElevation_m: orNull,
		higherBy_m: orNull,
		correction_K: z.number(),
		possibleCorrection_K: z.number()
	})
]) satisfies z.ZodType<Json<LakeOrigin>>;

export const lakeOrder = z
	.object({ order: z.array(origin).describe('The most trusted first') })
	.meta({ id: 'LakeOrder' });

export const refreshState = z
	.object({
		lake: z.string(),
		isRunning: z.boolean(),
		sources: z.array(
			z.object({
				source: z.string(),
				name: z.string(),
				status: z.enum(['idle', 'waiting', 'asking', 'done', 'failed', 'notAsked', 'stopped']),
				doneDays: z.int(),
				wantedDays: z.int(),
				sentences: z.array(z.string()),
				startedAt: instant.nullable(),
				finishedAt: instant.nullable(),
				nextAt: instant.nullable()
			})
		)
	})
	.meta({ id: 'RefreshState' }) satisfies z.ZodType<Json<RefreshState>>;

export const logEntry = z
	.object({
		id: z.int(),
		at: instant,
		source: z.string(),
		sourceName: z.string(),
		lake: z.string().nullable(),
		lakeName: z.string().nullable(),
		part: z.enum(['history', 'forecast']),
		outcome: z.enum(['ok', 'unchanged', 'failed', 'notAsked']),
		stored: z.int(),
		calls: z.int(),
		bytes: z.int(),
		duration_ms: z.int(),
		faults: z.array(z.object({ code: z.string(), text: z.string() }))
	})
	.meta({ id: 'LogEntry' }) satisfies z.ZodType<Json<LogEntry>>;

const hour = z.object({
	at_s: z.int(),
	air_degC: orNull,
	precipitation_kg_m2: orNull,
	snowfall_kg_m2: orNull,
	landSnow_m: orNull,
	wind_m_s: orNull
});

const fault = z.object({
	code: z.enum(FAULT_CODES),
	text: z.string(),
	count: z.int().optional(),
	at: z.string().optional()
});

export const tried = z
	.object({
		raw: z.string().describe('The first 64 kB of the answer as text, never to be shown as markup'),
		isCut: z.boolean(),
		answeredBy: z.string().nullable(),
		status: z.int().nullable(),
		contentType: z.string().nullable(),
		suggestion: z.looseObject({}).nullable(),
		mapping: z.looseObject({}).nullable(),
		answer: z.looseObject({
			outcome: z.enum(['ok', 'unchanged', 'failed']),
			hours: z.array(hour),
			faults: z.array(fault)
		}),
		words: z.array(z.string()),
		comparison: z
			.object({
				days: z.int(),
				bias_K: z.number(),
				spread_K: z.number(),
				with: z.string(),
				faults: z.array(fault)
			})
			.nullable()
			.describe('Beside the stored days of the lake')
	})
	.meta({ id: 'Tried' });
