import type { FormInput } from './form-input.ts';

/** A load as the form gives it, in SI, still to pass the schema of the service. */
export interface LoadInput {
	name: string;
	mass_kg: number;
	use: string | null;
	parked_h: number;
	wetCracks: number;
	current: boolean;
	group: boolean;
}

export function readLoad(
	input: FormInput,
	stored?: { mass_kg: number; parked_h: number }
): LoadInput {
	return {
		name: input.required('name', 'Give the load a name.'),
		mass_kg:
			input.quantity('mass', 'mass', {
				from: 1,
				to: 1_000_000,
				isRequired: true,
				stored: stored?.mass_kg
			}) ?? 0,
		use: input.text('use'),
		parked_h:
			input.quantity('parked', 'hours', { from: 0, to: 8760, stored: stored?.parked_h }) ?? 0,
		wetCracks: Number(input.text('wetCracks') ?? 0),
		current: input.text('current') === 'yes',
		group: input.text('group') === 'yes'
	};
}
