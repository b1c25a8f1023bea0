import { z } from 'zod';
import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';
import { plainLine, plainLines } from './plain-lines.ts';

/** Pieces that the input schemas share. */
export const isoDate = z
	.string()
	.refine(isIsoDate, 'must be a day written YYYY-MM-DD')
	.meta({ id: 'Day', description: "A day of the lake's own calendar", format: 'date' });

export const winterId = z
	.string()
	.refine(isWinterId, 'must be a winter written as its two years, such as 2026-27')
	.meta({ id: 'WinterId', description: 'A winter, 1 July to 30 June, by its two years' });

export const name = z.string().overwrite(plainLine).min(1, 'must not be empty').max(120);

/** A number between two ends; `unknown` stands for what nobody has measured. */
export function between(low: number, high: number, unit: string) {
	const message = `must be from ${low} to ${high} ${unit}`;
	return z.number().min(low, message).max(high, message);
}

export function orUnknown<Schema extends z.ZodType>(schema: Schema) {
	return schema.nullable().default(null);
}

/** Free text; what is empty is absent. */
export function freeText(longest: number) {
	return emptyIsAbsent(z.string().overwrite(plainLines).max(longest));
}

/** Free text of one line, as the name of a place or a person. */
export function freeLine(longest: number) {
	return emptyIsAbsent(z.string().overwrite(plainLine).max(longest));
}

function emptyIsAbsent(text: z.ZodString) {
	return text
		.transform((plain) => (plain === '' ? null : plain))
		.nullable()
		.default(null);
}
