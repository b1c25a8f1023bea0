import { z } from 'zod';
import type { EarlyIceAnswer } from '#lib/server/services/early-ice.ts';
import { isoDate, winterId } from '#lib/server/services/fields.ts';
import { quantiles } from './answers.ts';

const orNull = z.number().nullable();
const chance = z.number().min(0).max(1);

const cooling = z.object({
	to: isoDate,
	week_degC: z.number(),
	weekBefore_degC: orNull,
	frost_degCd: z.number().describe('Since 1 July; it cools the water and counts for no ice'),
	frostDays: z.int(),
	firstFrostOn: isoDate.nullable(),
	smoothed_degC: z.number().describe('Air with a memory that goes by the mean depth'),
	depth_m: z.number(),
	isDepthAssumed: z.boolean()
});

const freezing = z.object({
	threshold: z.object({ mean_degC: z.number(), sd_K: z.number() }),
	earlier: z.array(z.object({ winter: winterId, freezeUpOn: isoDate, smoothed_degC: z.number() })),
	chances: z
		.array(z.object({ on: isoDate, pFrozen: chance }))
		.describe('Rough: that the lake has frozen over by the end of the day'),
	climate: z
		.object({ pastWinters: z.int(), hasUsual: z.boolean(), endsEarly: z.boolean() })
		.nullable()
});

const pair = z.object({ p10_m: z.number(), p50_m: z.number(), bound_m: z.number() });

const load = z.object({
	id: z.string(),
	name: z.string(),
	status: z.enum(['notYet', 'expectedNotDrilled', 'reached', 'withheld', 'askAnEngineer']),
	required_m: orNull,
	base_m: orNull,
	frostToGo_degCd: z.object({ estimate: z.number(), bound: z.number() }).nullable(),
	expectedFrom: isoDate.nullable(),
	likelyFrom: isoDate.nullable(),
	weekend: z.array(z.object({ on: isoDate, pThickness: orNull, pThaw: orNull }))
});

const growth = z.object({
	total_m: quantiles,
	bound_m: orNull,
	growth_m_d: orNull,
	snowKnown: z.boolean(),
	pThin: orNull.describe('Share of holes under 10 cm, which wind easily breaks out'),
	rates: z
		.object({
			air_degC: z.number(),
			rows: z.array(z.object({ moreSnow_m: z.number(), growth_m_d: z.number() }))
		})
		.nullable(),
	forecast: z.object({ to: isoDate, frost_degCd: z.number() }).nullable(),
	snow: z.object({ on: isoDate, fall_kg_m2: z.number(), with: pair, without: pair }).nullable(),
	loads: z.array(load),
	test: z
		.object({
			on: isoDate.nullable(),
			isThawInTheWay: z.boolean(),
			lowest_m: z.number(),
			asked_m: z.number()
		})
		.nullable()
		.describe('First day on which the lowest chart minimum on foot is as likely as not'),
	days: z.array(
		z.object({
			on: isoDate,
			source: z.enum(['observed', 'forecast', 'climate', 'gap']),
			air_degC: orNull,
			total_m: quantiles,
			bound_m: orNull,
			pThin: orNull
		})
	)
});

export const earlyIce = z
	.object({
		lake: z.string(),
		site: z.string(),
		winter: winterId,
		phase: z.enum(['beforeFreezeUp', 'growing', 'past', 'unknown']),
		pastBecause: z.enum(['iceOut', 'firstLoadsLikely', 'noMoreGrowth']).nullable(),
		asOf: isoDate,
		now: isoDate,
		cooling: cooling.nullable(),
		freezing: freezing.nullable(),
		growth: growth.nullable(),
		wind: z.object({
			isForecast: z.boolean(),
			isObserved: z.boolean(),
			days: z.array(
				z.object({
					on: isoDate,
					wind_m_s: z.number(),
					source: z.enum(['observed', 'forecast']),
					pThin: orNull
				})
			)
		}),
		cautions: z.array(z.object({ code: z.string(), text: z.string() }))
	})
	.meta({ id: 'EarlyIce' }) satisfies z.ZodType<EarlyIceAnswer>;
