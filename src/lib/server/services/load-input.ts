import { z } from 'zod';
import { chartUse } from './charts.ts';
import { between, name, orUnknown } from './fields.ts';

const trailer = z.strictObject({
	mass_kg: between(1, 1_000_000, 'kg').describe('With all that is on it'),
	apart_m: orUnknown(between(0, 1000, 'm')).describe('Kept between the two; null: hitched')
});

const facts = {
	name,
	mass_kg: between(1, 1_000_000, 'kg').describe('Of one, without its trailer'),
	use: chartUse.nullable().describe('Row of the charts; null: none fits'),
	parked_h: between(0, 8760, 'h').describe('Time in one place; 0 while it keeps moving'),
	wetCracks: z.union([z.literal(0), z.literal(1), z.literal(2)]),
	current: z.boolean().describe('Its way crosses moving water'),
	group: z.boolean().describe('Others are close by'),
	trailer: trailer.nullable(),
	count: z
		.int('must be a whole number')
		.min(1, 'must be from 1 to 200')
		.max(200, 'must be from 1 to 200')
		.describe('How many of them go together'),
	spacing_m: between(0, 1000, 'm')
		.nullable()
		.describe('Kept from one to the next; null: they count together')
};

export const loadInput = z
	.strictObject({
		name: facts.name,
		mass_kg: facts.mass_kg,
		use: facts.use.default(null),
		parked_h: facts.parked_h.default(0),
		wetCracks: facts.wetCracks.default(0),
		current: facts.current.default(false),
		group: facts.group.default(false),
		trailer: facts.trailer.default(null),
		count: facts.count.default(1),
		spacing_m: facts.spacing_m.default(null)
	})
	.meta({ id: 'LoadInput' });

export const loadChange = z
	.strictObject({
		name: facts.name.exactOptional(),
		mass_kg: facts.mass_kg.exactOptional(),
		use: facts.use.exactOptional(),
		parked_h: facts.parked_h.exactOptional(),
		wetCracks: facts.wetCracks.exactOptional(),
		current: facts.current.exactOptional(),
		group: facts.group.exactOptional(),
		trailer: facts.trailer.exactOptional(),
		count: facts.count.exactOptional(),
		spacing_m: facts.spacing_m.exactOptional()
	})
	.meta({ id: 'LoadChange' });

export type NewLoad = z.output<typeof loadInput>;
export type LoadChange = z.output<typeof loadChange>;
