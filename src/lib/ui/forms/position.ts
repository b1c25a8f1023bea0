import { readTypedNumber } from './typed-number.ts';

/** A point as two typed texts, each still to be read by {@link readDegrees}. */
export interface TypedPosition {
	latitude: string;
	longitude: string;
}

/** A comma between digits may be a decimal one, so alone it parts only numbers that have points. */
const PAIRS = [
	/^(.*[NSns])[\s,;]+(.*[EWew])$/,
	/^(-?\d+\.\d+),(-?\d+\.\d+)$/,
	/^(-?\d+(?:\.\d+)?)(?:\s*;\s*|,\s+|\s+)(-?\d+(?:\.\d+)?)$/,
	/^(-?\d+(?:,\d+)?)(?:\s*;\s*|\s+)(-?\d+(?:,\d+)?)$/
];

/** Takes a pair pasted into the latitude field apart; leaves anything else alone. */
export function splitPosition(latitude: string, longitude: string): TypedPosition {
	if (longitude.trim() !== '') return { latitude, longitude };
	const text = latitude.trim().replaceAll('−', '-');
	const pair = PAIRS.map((pattern) => pattern.exec(text)).find(Boolean);
	return pair?.[1] && pair[2]
		? { latitude: pair[1].trim(), longitude: pair[2].trim() }
		: { latitude, longitude };
}

/**
 * Degrees north or east from decimal degrees or degrees, minutes and seconds; `null` when it is neither.
 *
 * @example readDegrees('61°12′N', 'latitude') // => 61.2
 */
export function readDegrees(text: string, axis: 'latitude' | 'longitude'): number | null {
	const letters = axis === 'latitude' ? 'NS' : 'EW';
	const upper = text.trim().toUpperCase();
	const letter = new RegExp(`^([${letters}])|([${letters}])$`).exec(upper);
	const sides = upper.replace(new RegExp(`^[${letters}]|[${letters}]$`, 'g'), '').trim();
	const parts = sides
		.replace(/[°º′'’″"”]/g, ' ')
		.trim()
		.split(/\s+/)
		.map((part) => readTypedNumber(part.replace(',', '.')).value);
	const degrees = sum(parts);
	if (degrees === null || (letter && sides.startsWith('-'))) return null;
	return /[SW]/.test(letter?.[0] ?? '') ? -degrees : degrees;
}

/** Degrees, minutes and seconds into degrees; `null` unless every part is in its range. */
function sum(parts: readonly (number | null)[]): number | null {
	const [degrees, minutes = 0, seconds = 0, ...more] = parts;
	if (degrees === undefined || degrees === null || minutes === null || seconds === null)
		return null;
	if (more.length > 0 || minutes < 0 || minutes >= 60 || seconds < 0 || seconds >= 60) return null;
	if (parts.length > 1 && !Number.isInteger(degrees)) return null;
	const size = Math.abs(degrees) + minutes / 60 + seconds / 3600;
	return Object.is(degrees, -0) || degrees < 0 ? -size : size;
}
