import { z } from 'zod';
import type { Planned } from '#lib/model/places/hole-plan.ts';
import { WEAK_SPOT_KINDS, type WeakSpot } from '#lib/model/places/weak-spot.ts';
import type { Route } from '#lib/model/places/route.ts';
import type { RouteState, SpotState } from '#lib/server/services/places/places-view.ts';
import type { TripNote } from '#lib/server/services/places/trip-notes.ts';
import { isoDate } from '#lib/server/services/fields.ts';

/** What the API answers of weak spots and routes. */
const id = z.string().min(1);
const orNull = z.number().nullable();

const position = z.object({ latitude: z.number(), longitude: z.number() }).nullable();

export const weakSpot = z
	.object({
		id,
		name: z.string(),
		kind: z.enum(WEAK_SPOT_KINDS),
		position,
		checkedOn: isoDate.nullable(),
		remark: z.string().nullable()
	})
	.meta({ id: 'WeakSpot' }) satisfies z.ZodType<WeakSpot>;

const check = z
	.object({
		state: z.enum([
			'counts',
			'neverDrilled',
			'tooOld',
			'thawed',
			'weatherUnknown',
			'broke',
			'never',
			'toldOnly'
		]),
		lastOn: isoDate.nullable(),
		drilledOn: isoDate.nullable(),
		until: isoDate.nullable(),
		effective_m: orNull.describe('Of the thinnest hole; what counts only while state is counts'),
		holes: z.int(),
		isHalved: z.boolean().describe('Layers were not told apart, and count half')
	})
	.meta({ id: 'PlaceCheck', description: 'What a place is known to carry by its own holes' });

const again = z.discriminatedUnion('code', [
	z.object({ code: z.literal('wind'), on: isoDate, wind_m_s: z.number(), since: isoDate }),
	z.object({ code: z.literal('windNotKnown'), since: isoDate }),
	z.object({
		code: z.literal('waterLevel'),
		water: z.enum(['river', 'reservoir']),
		since: isoDate
	})
]);

export const spotState = z
	.object({ spot: weakSpot, check, again: z.array(again).describe('Why to look again') })
	.meta({ id: 'WeakSpotState' }) satisfies z.ZodType<SpotState>;

export const route = z
	.object({
		id,
		name: z.string(),
		startsAtShore: z.boolean(),
		endsAtShore: z.boolean(),
		points: z.array(
			z.object({
				name: z.string(),
				position,
				leg_m: orNull,
				spot: weakSpot.nullable(),
				isSpotDeleted: z.boolean(),
				site: id
			})
		)
	})
	.meta({ id: 'Route' }) satisfies z.ZodType<Route>;

export const routeState = z
	.object({
		route,
		answer: z.object({
			points: z.array(
				z.object({
					name: z.string(),
					effective_m: orNull,
					by: z.enum(['bound', 'holes']).nullable(),
					check
				})
			),
			unknown: z.array(z.int()).describe('Points of which nothing is known, counted from 0'),
			weakest: z.int().nullable(),
			loads: z.array(
				z.object({
					id,
					name: z.string(),
					mass_kg: z.number(),
					counted_kg: z.number(),
					status: z.enum([
						'notYet',
						'expectedNotDrilled',
						'reached',
						'withheld',
						'askAnEngineer',
						'notKnown'
					]),
					weakest: z.int().nullable(),
					required_m: orNull,
					effective_m: orNull,
					holes: z.int(),
					holesAsked: z.int()
				})
			)
		}),
		again: z.array(z.array(again))
	})
	.meta({
		id: 'RouteState',
		description: 'What a route carries: what its weakest known point does, never the average'
	}) satisfies z.ZodType<RouteState>;

export const planned = z
	.discriminatedUnion('status', [
		z.object({
			status: z.literal('planned'),
			plan: z.object({
				length_m: z.number(),
				holes: z.array(
					z.object({
						at_m: z.number().describe('Along the route'),
						after: z.int().describe('The point it is at or has passed last, counted from 0'),
						after_m: z.number(),
						isAtPoint: z.boolean(),
						position
					})
				)
			})
		}),
		z.object({ status: z.literal('lengthNotKnown'), to: z.array(z.int()) }),
		z.object({ status: z.literal('tooLong'), length_m: z.number() }),
		z.object({ status: z.literal('tooFewPoints') })
	])
	.meta({ id: 'HolePlan' }) satisfies z.ZodType<Planned>;

const kept = z.string().nullable();

export const tripNote = z
	.object({ emergency: kept, party: kept, back: kept, told: kept })
	.meta({ id: 'TripNote' }) satisfies z.ZodType<TripNote>;

export const takenIn = z
	.object({ spots: z.int(), routes: z.int(), notes: z.array(z.string()) })
	.meta({ id: 'GpxTakenIn' });
