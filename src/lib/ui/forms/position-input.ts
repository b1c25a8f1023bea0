import type { FormInput } from './form-input.ts';
import type { Together } from './merge-shown.ts';
import { readDegrees, splitPosition } from './position.ts';

/** A position that may be left out; half of one is refused. */
export interface OptionalPosition {
	latitude: number | null;
	longitude: number | null;
}

/** Half of a position with half of another's is a third place. */
export const ONE_POSITION: Together = {
	has: (field) => field === 'latitude' || field === 'longitude',
	at: 'latitude',
	said: ({ latitude = '', longitude = '' }) => [latitude, longitude].filter(Boolean).join(', ')
};

/**
 * Reads a position from two fields named so after a prefix; a pasted pair is taken apart, and a field left
 * as it was shown keeps what is stored to the last digit.
 */
export function readPosition(
	input: FormInput,
	prefix = '',
	stored: OptionalPosition = { latitude: null, longitude: null }
): OptionalPosition {
	const [north, east] = [`${prefix}latitude`, `${prefix}longitude`];
	const typed = splitPosition(input.values[north] ?? '', input.values[east] ?? '');
	input.values[north] = typed.latitude;
	input.values[east] = typed.longitude;
	const latitude = degrees(input, north, 'latitude', stored.latitude);
	const longitude = degrees(input, east, 'longitude', stored.longitude);
	const [hasNorth, hasEast] = [input.text(north) !== null, input.text(east) !== null];
	if (hasNorth && !hasEast) input.refuse(east, 'Type the longitude too, or leave both empty.');
	if (hasEast && !hasNorth) input.refuse(north, 'Type the latitude too, or leave both empty.');
	return { latitude, longitude };
}

function degrees(
	input: FormInput,
	field: string,
	axis: 'latitude' | 'longitude',
	stored: number | null
): number | null {
	const text = input.text(field);
	if (text === null) return null;
	if (stored !== null && text === degreesText(stored)) return stored;
	const value = readDegrees(text, axis);
	const [most, example] = axis === 'latitude' ? [90, '61°12′N'] : [180, '25°06′E'];
	if (value === null)
		input.refuse(
			field,
			`“${text}” is not a ${axis}. Type degrees, like ${most === 90 ? '61.2' : '25.1'}, or ${example}.`
		);
	else if (Math.abs(value) > most)
		input.refuse(field, `${value} is outside ${-most} to ${most}. Is it the other one of the two?`);
	return value;
}

/** What stands in a field: to about a tenth of a metre. */
export function degreesText(degrees: number | null): string {
	return degrees === null ? '' : String(Number(degrees.toFixed(6)));
}
