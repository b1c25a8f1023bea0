import type { LoadCase, Trailer } from '#lib/model/load-case.ts';
import type { Units } from '../units-setting.ts';
import type { FormInput, FormValues } from './form-input.ts';
import { USES } from './load-words.ts';
import { plainWords } from './merge-shown.ts';
import { fieldText, fieldUnit, fieldUnits } from './quantity.ts';

/** A load as the form gives it, in SI, still to pass the schema of the service. */
export interface LoadInput extends Omit<LoadCase, 'id' | 'use' | 'wetCracks'> {
	use: string | null;
	wetCracks: number;
}

const HEAVIEST_kg = 1_000_000;
const FURTHEST_m = 1000;

/** A stored load as its form shows it. */
export function loadValues(load: LoadCase, units: Units): FormValues {
	const [mass, away] = [fieldUnit('mass', units), fieldUnit('distance', units)];
	return {
		name: load.name,
		[`mass_${mass.suffix}`]: fieldText(load.mass_kg, mass),
		use: load.use ?? '',
		parked_h: fieldText(load.parked_h, fieldUnits('hours')[0]),
		wetCracks: String(load.wetCracks),
		...(load.current ? { current: 'yes' } : {}),
		...(load.group ? { group: 'yes' } : {}),
		[`trailer_${mass.suffix}`]: fieldText(load.trailer?.mass_kg ?? null, mass),
		[`trailerApart_${away.suffix}`]: fieldText(load.trailer?.apart_m ?? null, away),
		count: String(load.count),
		[`spacing_${away.suffix}`]: fieldText(load.spacing_m, away)
	};
}

/** A value of a field as the form calls it. */
export function loadWordsOf(field: string, text: string): string {
	if (field !== 'use') return plainWords(field, text);
	return USES.find(({ value }) => value === text)?.label ?? 'none: its mass decides';
}

export function readLoad(input: FormInput, stored?: LoadCase): LoadInput {
	return {
		name: input.required('name', 'Give the load a name.'),
		mass_kg:
			input.quantity('mass', 'mass', {
				from: 1,
				to: HEAVIEST_kg,
				isRequired: true,
				stored: stored?.mass_kg
			}) ?? 0,
		use: input.text('use'),
		parked_h:
			input.quantity('parked', 'hours', { from: 0, to: 8760, stored: stored?.parked_h }) ?? 0,
		wetCracks: Number(input.text('wetCracks') ?? 0),
		current: input.text('current') === 'yes',
		group: input.text('group') === 'yes',
		trailer: readTrailer(input, stored?.trailer ?? null),
		count: Number(input.text('count') ?? 1),
		spacing_m: input.quantity('spacing', 'distance', {
			from: 0,
			to: FURTHEST_m,
			stored: stored?.spacing_m
		})
	};
}

/** Nothing typed, or a mass of nothing, is no trailer. */
function readTrailer(input: FormInput, stored: Trailer | null): Trailer | null {
	const mass_kg = input.quantity('trailer', 'mass', {
		from: 0,
		to: HEAVIEST_kg,
		stored: stored?.mass_kg
	});
	const apart_m = input.quantity('trailerApart', 'distance', {
		from: 0,
		to: FURTHEST_m,
		stored: stored?.apart_m
	});
	if (mass_kg !== null && mass_kg > 0) return { mass_kg, apart_m };
	if (apart_m !== null)
		input.refuse(
			input.fieldOf('trailerApart', 'distance'),
			'Type the mass of what it draws too, or leave this empty.'
		);
	return null;
}
