import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import { KIND_OPTIONS } from '../places/kind-words.ts';
import type { FormInput, FormValues } from './form-input.ts';
import { plainWords } from './merge-shown.ts';
import { degreesText, readPosition } from './position-input.ts';

/** A stored weak spot as its form shows it. */
export function spotValues(spot: WeakSpot): FormValues {
	return {
		name: spot.name,
		kind: spot.kind,
		latitude: degreesText(spot.position?.latitude ?? null),
		longitude: degreesText(spot.position?.longitude ?? null),
		checkedOn: spot.checkedOn ?? '',
		remark: spot.remark ?? ''
	};
}

/** A value of a field as the form calls it. */
export function spotWords(field: string, text: string): string {
	return field === 'kind'
		? (KIND_OPTIONS.find(({ value }) => value === text)?.label ?? text)
		: plainWords(field, text);
}

/** A weak spot as the form gives it, still to pass the schema of the service. */
export function readSpot(input: FormInput, today: string, stored?: WeakSpot) {
	const checkedOn = input.day('checkedOn');
	if (checkedOn !== null && checkedOn > today)
		input.refuse('checkedOn', 'That day is still to come. Leave it empty where nobody has looked.');
	return {
		name: input.required('name', 'Give it a name: yours, the same as in your readings.'),
		kind: input.required('kind', 'Choose what makes it weak.'),
		...readPosition(input, '', stored?.position ?? undefined),
		checkedOn,
		remark: input.text('remark')
	};
}
