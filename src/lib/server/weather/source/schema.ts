import { z } from 'zod';
import { callProblems, mappingProblems } from './schema-rules.ts';
import { headerProblem, templateProblem } from './template.ts';
import { unitsFor, type ValueRole } from '../cells/units.ts';

/** In the answer: a JSONPath of RFC 9535, for CSV the name of a column. */
const path = z.string().trim().min(1).max(300);

/** Of a source's address, with `{latitude}`, `{from:yyyy-MM-dd}` and the like. */
const address = z.string().trim().max(2000).superRefine(report(templateProblem));

const headers = z
	.record(z.string().max(100), z.string().max(500))
	.superRefine((fields, context) => {
		for (const [name, value] of Object.entries(fields)) {
			const message = headerProblem(name, value);
			if (message) context.addIssue({ code: 'custom', path: [name], message });
		}
	});

export const TIME_FORMS = [
	'iso',
	'interval',
	'epoch_s',
	'epoch_ms',
	'Ymd',
	'd/m/Y',
	'm/d/Y',
	'd mon Y',
	'mon d Y'
] as const;

/** The clock of times that carry no offset: one in words, an IANA name, or where the answer has it. */
const zone = z.union([
	z.enum(['offset', 'utc', 'lake']),
	z.strictObject({ name: z.string().trim().min(1).max(60) }),
	z.strictObject({ path })
]);

/** `instant` is the value of a moment: between two of them it is interpolated. */
const stamp = z.enum(['start', 'end', 'instant']);

const time = z.strictObject({
	path,
	/** Where the time of day stands apart from the date. */
	clock: path.optional(),
	form: z.enum(TIME_FORMS),
	zone,
	stamp
});

function valueOf(role: ValueRole) {
	const value = z.strictObject({
		path,
		unit: z.enum(unitsFor(role)),
		/** Multiplies the number before its unit is read. */
		scale: z
			.number()
			.finite()
			.refine((factor) => factor !== 0, 'must not be 0')
			.optional(),
		/** Where it differs from that of the time. */
		stamp: stamp.optional(),
		/** The span that an amount stands for, where it is not the step of the rows. */
		duration_h: z.number().positive().max(24).optional(),
		/** A value with times of its own. */
		time: path.optional()
	});
	/** Taken where the first has no value. */
	return value.extend({ orElse: value.omit({ time: true }).optional() });
}

const values = z.strictObject({
	air: valueOf('air').optional(),
	min: valueOf('min').optional(),
	max: valueOf('max').optional(),
	precipitation: valueOf('precipitation').optional(),
	snowfall: valueOf('snowfall').optional(),
	landSnow: valueOf('landSnow').optional(),
	wind: valueOf('wind').optional()
});

const station = z.strictObject({
	name: path.optional(),
	latitude: path.optional(),
	longitude: path.optional(),
	elevation_m: path.optional()
});

export const mapping = z
	.strictObject({
		layout: z.enum(['columns', 'rows', 'csv']),
		/** Where the rows are; the other paths then start at a row, which is their `$`. */
		rows: path.optional(),
		step: z.enum(['hourly', 'daily']),
		time,
		values,
		/** When the forecast was made. */
		issued: path.optional(),
		station: station.optional()
	})
	.superRefine(report(mappingProblems));

/** A call whose answer names what `{next}` stands for in the one after it. */
const firstCall = z.strictObject({ address, headers: headers.optional(), next: path });

const span_d = z.number().int().positive();

export const call = z
	.strictObject({
		part: z.enum(['history', 'forecast', 'both']),
		first: z.array(firstCall).max(3).optional(),
		address,
		headers: headers.optional(),
		format: z.enum(['json', 'csv']),
		/** The longest span of one call. */
		chunk_d: span_d.max(400),
		reach: z.strictObject({
			/** How far back and ahead of today it knows; without it there is no limit. */
			back_d: span_d.max(40_000).optional(),
			ahead_d: span_d.max(30).optional(),
			/** How long after an hour it is known. */
			lag_h: z.number().nonnegative().max(2400).optional()
		}),
		mapping
	})
	.superRefine(report(callProblems));

/** A call that is being set up. */
export const trialCall = z
	.strictObject({
		first: z.array(firstCall).max(3).optional(),
		address,
		headers: headers.optional(),
		format: z.enum(['json', 'csv']),
		mapping: mapping.nullable()
	})
	.superRefine(report(callProblems));

const webAddress = z.url({ protocol: /^https?$/ }).max(300);

export const weatherSource = z.strictObject({
	id: z.string().regex(/^[a-z0-9][a-z0-9-]{1,39}$/, 'must be small letters, digits and hyphens'),
	name: z.string().trim().min(1).max(80),
	homepage: webAddress,
	/** Where the shape of its answers is described. */
	documentation: webAddress.optional(),
	terms: z.strictObject({
		/** Shown wherever its data are shown. */
		attribution: z.string().trim().min(1).max(300),
		attributionUrl: webAddress.optional(),
		licence: z.string().trim().min(1).max(120).optional(),
		note: z.string().trim().max(600)
	}),
	limits: z.strictObject({
		perDay: z.number().int().positive(),
		perMinute: z.number().int().positive().optional(),
		/** Between two refreshes of one lake. */
		minInterval_min: z.number().int().nonnegative()
	}),
	needsKey: z.boolean(),
	/** The User-Agent must say where the operator can be reached. */
	wantsContact: z.boolean(),
	calls: z.array(call).min(1).max(4)
});

export type WeatherSource = z.infer<typeof weatherSource>;
export type Call = z.infer<typeof call>;
export type TrialCall = z.infer<typeof trialCall>;
export type Mapping = z.infer<typeof mapping>;
export type ValueMapping = NonNullable<Mapping['values']['air']>;
export type Stamp = z.infer<typeof stamp>;
export type TimeForm = (typeof TIME_FORMS)[number];

/** What a rule says of a value: nothing, or one sentence or several. */
function report<Value>(rule: (value: Value) => string | readonly string[] | null) {
	return (value: Value, context: z.RefinementCtx): void => {
		const found = rule(value) ?? [];
		for (const message of typeof found === 'string' ? [found] : found) {
			context.addIssue({ code: 'custom', message });
		}
	};
}
