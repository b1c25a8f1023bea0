import { z } from 'zod';
import { between, name, orUnknown } from '../fields.ts';
import { MAIN_SITE } from '../sites.ts';
import { latitude, longitude, refuseHalfPosition } from './weak-spots.ts';

/** As long as anybody plans; a slip of a file is caught. */
export const MOST_POINTS = 100;

const LEG = 'Way from the point before; used where positions do not tell it';
const LONGEST_LEG_m = 100_000;

const leg_m = orUnknown(between(0, LONGEST_LEG_m, 'm')).meta({ description: LEG });

const point = z
	.strictObject({
		spot: orUnknown(z.string().min(1).max(80)).meta({ description: 'Id of a weak spot' }),
		name: orUnknown(name),
		latitude: orUnknown(latitude),
		longitude: orUnknown(longitude),
		site: z.string().min(1).max(80).default(MAIN_SITE),
		leg_m
	})
	.superRefine((each, check) => {
		refuseHalfPosition(each, check);
		const isSpot = each.spot !== null;
		if (isSpot === (each.name !== null)) {
			const message = 'must be either the id of a weak spot or have a name of its own';
			check.addIssue({ code: 'custom', path: [isSpot ? 'name' : 'spot'], message });
		}
		if (isSpot && each.latitude !== null) {
			const message = "must be left out: a weak spot's position is its own";
			check.addIssue({ code: 'custom', path: ['latitude'], message });
		}
	})
	.meta({ id: 'RoutePointInput' });

export const routeInput = z
	.strictObject({
		name,
		startsAtShore: z.boolean().default(true),
		endsAtShore: z.boolean().default(false),
		points: z
			.array(point)
			.min(2, 'must hold two points at least')
			.max(MOST_POINTS, `must hold ${MOST_POINTS} points at most`)
	})
	.meta({ id: 'RouteInput' });

export type NewRoute = z.output<typeof routeInput>;
export type NewPoint = NewRoute['points'][number];
