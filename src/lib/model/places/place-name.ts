/** A place's name as names are compared: without outer space, case and ways to write an accent. */
export function placeKey(place: string | null): string {
	return (place ?? '').normalize('NFC').trim().toLowerCase();
}

/** True when both names mean one place. @example isSamePlace('Narrow bay ', 'narrow Bay') // => true */
export function isSamePlace(one: string | null, other: string | null): boolean {
	return placeKey(one) === placeKey(other);
}
