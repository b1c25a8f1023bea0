import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import type { FormInput } from './form-input.ts';
import { readPosition } from './position-input.ts';

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
