import { z } from 'zod';
import type { Context } from '../../context.ts';
import { findTripNote, replaceTripNote } from '../../storage/trip-notes.ts';
import { freeText } from '../fields.ts';
import { getLake } from '../lakes.ts';

/** What a trip sheet says of people. Kept only where somebody asked for it. */
export const tripNoteInput = z
	.strictObject({
		emergency: freeText(120).meta({ description: 'The number to call, as somebody entered it' }),
		party: freeText(300).meta({ description: 'Who goes' }),
		back: freeText(200).meta({ description: 'When they are back' }),
		told: freeText(300).meta({ description: 'Who is told, and calls for help' })
	})
	.meta({ id: 'TripNoteInput' });

export type TripNote = z.output<typeof tripNoteInput>;

/** What is kept; `null` for each that is not. @throws LakeNotFound */
export async function getTripNote(ctx: Context, lakeId: string): Promise<TripNote> {
	await getLake(ctx, lakeId);
	const { emergency, party, back, told } = (await findTripNote(ctx.db, lakeId)) ?? EMPTY;
	return { emergency, party, back, told };
}

/** Keeps this in place of what was kept; what is `null` is forgotten. @throws LakeNotFound */
export async function keepTripNote(
	ctx: Context,
	lakeId: string,
	note: TripNote
): Promise<TripNote> {
	await getLake(ctx, lakeId);
	await replaceTripNote(ctx.db, { lake_id: lakeId, ...note });
	return note;
}

const EMPTY: TripNote = { emergency: null, party: null, back: null, told: null };
