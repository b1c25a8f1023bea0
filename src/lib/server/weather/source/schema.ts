import { z } from 'zod';
import { mapping, path } from './mapping-schema.ts';
import { report } from './report.ts';
import { callProblems } from './schema-rules.ts';
import { headerProblem, templateProblem } from './template.ts';

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
		format: z.enum(['json', 'csv']).default('json'),
		/** Without one it is suggested from the answer, and tried. */
		mapping: mapping.nullable().default(null)
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

export {
	mapping,
	TIME_FORMS,
	type Mapping,
	type Stamp,
	type TimeForm,
	type ValueMapping
} from './mapping-schema.ts';

export type WeatherSource = z.infer<typeof weatherSource>;
export type Call = z.infer<typeof call>;
export type TrialCall = z.infer<typeof trialCall>;
