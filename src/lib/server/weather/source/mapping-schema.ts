import { z } from 'zod';
import { unitsFor, type ValueRole } from '../cells/units.ts';
import { mappingProblems } from './schema-rules.ts';
import { report } from './report.ts';

/** In the answer: a JSONPath of RFC 9535, for CSV the name of a column. */
export const path = z.string().trim().min(1).max(300);

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

export type Mapping = z.infer<typeof mapping>;
export type ValueMapping = NonNullable<Mapping['values']['air']>;
export type Stamp = z.infer<typeof stamp>;
export type TimeForm = (typeof TIME_FORMS)[number];
