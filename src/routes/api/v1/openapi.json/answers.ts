import { z } from 'zod';
import type { Reading } from '#lib/model/reading.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { ForecastAnswer } from '#lib/server/services/forecast.ts';
import type { LakeRecord } from '#lib/server/services/lakes.ts';
import { isoDate, winterId } from '#lib/server/services/fields.ts';
import { leaving } from './leaving-answer.ts';

/** What the API answers with, for the description; what it takes is described by its own schemas. */
const id = z.string().min(1);
const orNull = z.number().nullable();

export const problem = z
	.object({
		type: z.string(),
		title: z.string(),
		status: z.int(),
		detail: z.string(),
		instance: z.string(),
		issues: z.array(z.object({ field: z.string(), message: z.string() })).optional()
	})
	.meta({ id: 'Problem', description: 'Problem details as in RFC 9457' });

export const lake = z
	.object({
		id,
		name: z.string(),
		latitude: z.number(),
		longitude: z.number(),
		elevation_m: orNull,
		area_km2: orNull,
		meanDepth_m: orNull,
		water: z.enum(['lake', 'river', 'reservoir']),
		timeZone: z.string(),
		chartSet: z.enum(['strict', 'common']),
		isInvented: z.boolean(),
		today: isoDate.nullable()
	})
	.meta({ id: 'Lake' }) satisfies z.ZodType<LakeRecord>;

const event = z.discriminatedUnion('kind', [
	z.object({ kind: z.literal('reopened'), on: isoDate, refrozeOn: isoDate.nullable() }),
	z.object({ kind: z.literal('cleared'), on: isoDate, snow_m: z.number() }),
	z.object({ kind: z.literal('packed'), on: isoDate, density_kg_m3: orNull }),
	z.object({ kind: z.literal('pumped'), on: isoDate, water_m: z.number() })
]);

export const siteWinter = z
	.object({
		winter: winterId,
		freezeUpOn: isoDate.nullable(),
		freezeUpBy: isoDate.nullable(),
		iceOutOn: isoDate.nullable(),
		events: z.array(event)
	})
	.meta({ id: 'SiteWinter' }) satisfies z.ZodType<SiteWinter>;

const source = z.enum(['observed', 'forecast', 'climate', 'gap']);

export const weather = z
	.object({
		from: isoDate.nullable(),
		to: isoDate.nullable(),
		days: z.array(
			z.object({
				on: isoDate,
				source,
				air_degC: orNull,
				min_degC: orNull,
				max_degC: orNull,
				freezing_degCd: orNull,
				thawing_degCd: orNull,
				aboveFreezing_h: orNull,
				precipitation_kg_m2: orNull,
				snowfall_kg_m2: orNull,
				landSnow_m: orNull,
				wind_m_s: orNull
			})
		)
	})
	.meta({ id: 'Weather' }) satisfies z.ZodType<{ days: WeatherDay[] }>;

export const importReport = z
	.object({
		accepted: z.int(),
		replaced: z.int(),
		repeated: z.int(),
		rejected: z.array(z.object({ line: z.int(), reason: z.string() })),
		rejectedCount: z.int(),
		columns: z.array(
			z.object({
				index: z.int(),
				header: z.string(),
				role: z.string(),
				unit: z.string().nullable(),
				sample: z.array(z.string()),
				why: z.string()
			})
		),
		warnings: z.array(z.string()),
		step: z.enum(['daily', 'hourly']),
		from: isoDate.nullable(),
		to: isoDate.nullable(),
		gapDays: z.int()
	})
	.meta({ id: 'ImportReport' });

const hole = z.object({
	total_m: orNull,
	clear_m: orNull,
	white_m: orNull,
	snow_m: orNull,
	slush_m: orNull,
	freeboard_m: orNull
});

export const reading = z
	.object({
		id,
		on: isoDate,
		place: z.string().nullable(),
		kind: z.enum(['measured', 'atLeast', 'wentThrough']),
		holes: z.array(hole),
		core: z.enum(['sound', 'wet', 'candled']).nullable(),
		by: z.string().nullable(),
		secondHand: z.boolean(),
		remark: z.string().nullable()
	})
	.meta({ id: 'Reading' }) satisfies z.ZodType<Reading>;

export const readingIds = z.object({ ids: z.array(id) }).meta({ id: 'ReadingIds' });

export const quantiles = z
	.object({ p05: orNull, p10: orNull, p50: orNull, p90: orNull, p95: orNull })
	.meta({
		id: 'Quantiles',
		description: 'Of what one hole at a random spot of the site would show; null: not estimated'
	});

const forecastDay = z.object({
	on: isoDate,
	source,
	air_degC: orNull,
	fdd_degCd: orNull,
	tdd_degCd: orNull,
	clear_m: quantiles,
	white_m: quantiles,
	snow_m: quantiles,
	slush_m: quantiles,
	total_m: quantiles,
	effective_m: quantiles,
	bound: z
		.object({ total_m: z.number(), effective_m: z.number() })
		.nullable()
		.describe('Lower bound to go by: at most p10, raised by thicker readings only gradually')
});

const askedParts = z.object({
	strict_m: orNull,
	common_m: orNull,
	gold_m: z.number(),
	afloat_m: orNull.describe('So that the ice under it stays above the water; null: it moves'),
	decides: z.enum(['chart', 'gold', 'afloat'])
});

const afloat = z.object({
	freeboard_m: z.number(),
	sagAtOnce_m: z.number(),
	sag_m: z.number(),
	lasts_h: z.number()
});

const forecastLoad = z.object({
	id,
	name: z.string(),
	mass_kg: z.number(),
	counted_kg: z.number().describe('All at one place: its trailer and those near by as well'),
	spacing_m: z.number().describe('From there on the next one counts on its own'),
	required_m: orNull,
	requiredOther_m: orNull,
	parts: askedParts.nullable().describe('What asks for it; null: an engineer'),
	afloat: afloat.nullable().describe('How the ice would float under it at the lower bound'),
	bound_m: orNull,
	rules: z.array(z.object({ code: z.string(), text: z.string(), source: z.string() })),
	status: z.enum(['notYet', 'expectedNotDrilled', 'reached', 'withheld', 'askAnEngineer']),
	reason: z.string(),
	expectedFrom: isoDate.nullable(),
	likelyFrom: isoDate.nullable(),
	until: isoDate
		.nullable()
		.describe(
			'Last day before three in a row under 0.5. The three days are of the stretch that is not over on `asOf`, else of the last that was'
		),
	isEndedBySnow: z
		.boolean()
		.describe('What stands there is sunk by snow after its days, where thickness would do'),
	days: z.array(z.object({ on: isoDate, pThickness: orNull, pThaw: orNull }))
});

export const forecast = z
	.object({
		lake: id,
		site: id,
		winter: winterId,
		asOf: isoDate,
		weatherTo: z.iso
			.datetime()
			.nullable()
			.describe('Up to when the weather that it is made from was observed without a break'),
		days: z.array(forecastDay),
		loads: z.array(forecastLoad),
		iceOut: z
			.object({
				p10: isoDate.nullable(),
				p50: isoDate.nullable(),
				p90: isoDate.nullable()
			})
			.nullable()
			.describe('Days by which the ice is gone in 10, 50 and 90 % of cases'),
		leaving: leaving
			.nullable()
			.describe('What late winter has done and will do; null: not known, or the ice is gone'),
		memoryText: z.string().nullable().describe('What past winters taught of the site'),
		cautions: z.array(z.object({ code: z.string(), text: z.string() }))
	})
	.meta({ id: 'Forecast' }) satisfies z.ZodType<ForecastAnswer>;
