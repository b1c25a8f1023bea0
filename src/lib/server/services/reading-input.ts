import { z } from 'zod';
import type { Hole } from '#lib/model/reading.ts';
import { between, freeLine, freeText, isoDate, orUnknown } from './fields.ts';

/** Thicker than any lake ice measured outside Antarctica's dry valleys; a slip of the unit is caught. */
const THICKEST_m = 6;

const thickness = orUnknown(between(0, THICKEST_m, 'm'));

const holeInput = z
	.strictObject({
		total_m: thickness,
		clear_m: thickness,
		white_m: thickness,
		snow_m: thickness,
		slush_m: thickness,
		freeboard_m: orUnknown(between(-2, 2, 'm'))
	})
	.refine((hole) => Object.values(hole).some((value) => value !== null), {
		message: 'must hold at least one measured value'
	})
	.meta({ id: 'HoleInput' });

const SECOND_HAND = 'Told by somebody else: it counts less, and no load counts as reached by it';

export const readingShape = z.strictObject({
	on: isoDate,
	place: freeLine(200),
	kind: z.enum(['measured', 'atLeast', 'wentThrough']),
	holes: z.array(holeInput).max(100),
	core: orUnknown(z.enum(['sound', 'wet', 'candled'])),
	by: freeLine(200),
	secondHand: z.boolean().default(false).meta({ description: SECOND_HAND }),
	remark: freeText(2000)
});

export const readingInput = readingShape
	.superRefine(reportMissingHoles)
	.meta({ id: 'ReadingInput' });

/** What is absent stays as it is. */
const readingChange = z
	.strictObject({
		on: isoDate.exactOptional(),
		place: readingShape.shape.place.unwrap().exactOptional(),
		kind: readingShape.shape.kind.exactOptional(),
		holes: readingShape.shape.holes.exactOptional(),
		core: readingShape.shape.core.unwrap().exactOptional(),
		by: readingShape.shape.by.unwrap().exactOptional(),
		secondHand: readingShape.shape.secondHand.unwrap().exactOptional(),
		remark: readingShape.shape.remark.unwrap().exactOptional()
	})
	.meta({ id: 'ReadingChange' });

/** A change with the version of the reading that it was made to. */
export const editedReading = readingChange
	.extend({
		version: z.int().min(1).exactOptional().meta({
			description: 'That the change was made to; without it whatever stands is written over'
		})
	})
	.meta({ id: 'EditedReading' });

export type NewReading = z.output<typeof readingInput>;
export type ReadingChange = z.output<typeof readingChange>;

export function reportMissingHoles(
	reading: z.output<typeof readingShape>,
	check: z.RefinementCtx
): void {
	const report = (message: string) => check.addIssue({ code: 'custom', path: ['holes'], message });
	if (reading.kind === 'measured' && reading.holes.length === 0) {
		report('must hold at least one hole for a measured reading');
	}
	if (reading.kind === 'atLeast' && !reading.holes.some(isThicknessKnown)) {
		report('must say how far the tool went in: total_m, or clear_m and white_m');
	}
}

function isThicknessKnown({ total_m, clear_m, white_m }: Hole): boolean {
	return total_m !== null || (clear_m !== null && white_m !== null);
}
