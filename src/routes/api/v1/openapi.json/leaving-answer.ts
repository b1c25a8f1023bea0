import { z } from 'zod';
import type { ComingOff } from '#lib/server/services/coming-off.ts';
import { isoDate } from '#lib/server/services/fields.ts';
import type { RemovalRecord } from '#lib/server/services/removal.ts';

const lastDay = z
	.discriminatedUnion('kind', [
		z.object({ kind: z.literal('until'), on: isoDate }),
		z.object({ kind: z.literal('beyond'), on: isoDate }),
		z.object({ kind: z.literal('never') }),
		z.object({ kind: z.literal('unknown') })
	])
	.describe(
		'The last day on which the requirement is met; beyond: still on the last day told; never: neither now nor later'
	);

const offBy = z
	.object({
		on: isoDate.nullable(),
		reason: z.enum(['removalDate', 'thickness', 'snow', 'warmSpell']).nullable(),
		beginOn: isoDate.nullable(),
		lead_d: z.int()
	})
	.describe('The latest day to have it off, and the day to begin');

const rule = z.object({ code: z.string(), text: z.string(), source: z.string() });

const night = z.object({
	on: isoDate,
	source: z.enum(['observed', 'forecast']),
	min_degC: z.number().nullable(),
	below_h: z.number(),
	freezing_degCd: z.number(),
	thawing_degCd: z.number(),
	refreezes: z.boolean()
});

const slush = z.object({
	p10_m: z.number(),
	p50_m: z.number(),
	p90_m: z.number(),
	floodsWith_m: z.number().nullable(),
	floodFrom: isoDate
		.nullable()
		.describe('First day on which the forecast floods it, as likely as not'),
	needs_degCd: z.number().nullable(),
	frozenBy: isoDate.nullable(),
	surelyFrozenBy: isoDate.nullable()
});

/** What late winter does to the ice, as far as `until` tells the days to come. */
export const leaving = z
	.object({
		warmLast_h: z.number().nullable(),
		peakOn: isoDate,
		thawSincePeak_degCd: z.number(),
		lost: z.object({ p10_m: z.number(), p50_m: z.number(), p90_m: z.number() }),
		thinnerSince: z
			.object({ on: isoDate, total_m: z.number() })
			.nullable()
			.describe('Seen after asOf and thinner than its estimate; the loss knows nothing of it'),
		isSunOnBareIce: z.boolean(),
		strength: z.object({
			state: z.enum(['open', 'inFrost', 'mild', 'sunlit', 'weakened', 'closed', 'rotten']),
			text: z.string(),
			rule: rule.nullable(),
			leftFraction: z.number().describe('Of the strength of sound ice, by the water inside it')
		}),
		nights: z.array(night),
		spellFrom: isoDate
			.nullable()
			.describe('From when a warm-spell rule is in force to the end of what is told'),
		toldTo: isoDate,
		removalOn: isoDate.nullable().describe('The local removal date, as typed'),
		loads: z.array(
			z.object({
				id: z.string(),
				isEndedBySnow: z.boolean(),
				median: lastDay,
				warmEnd: lastDay,
				offBy
			})
		),
		slush: slush.nullable(),
		texts: z.object({
			warmth: z.string(),
			lost: z.string(),
			nights: z.string(),
			spell: z.string(),
			iceOut: z.string(),
			slush: z.string().nullable(),
			shore: z.string()
		})
	})
	.meta({ id: 'Leaving' }) satisfies z.ZodType<ComingOff>;

export const removal = z
	.object({
		removalOn: isoDate.nullable(),
		leads: z.array(z.object({ load: z.string(), lead_d: z.int() }))
	})
	.meta({ id: 'Removal' }) satisfies z.ZodType<RemovalRecord>;
