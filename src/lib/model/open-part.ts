import type { IsoDate } from './calendar.ts';
import { placeKind } from './place-kind.ts';
import { isSamePlace } from './places/place-name.ts';
import type { Reading } from './reading.ts';

/** True for a reading at one of these weak spots, named: it tells of that place alone. */
export function isAtWeakSpot({ place }: Reading, weakSpots: readonly string[] = []): boolean {
	return place !== null && weakSpots.some((name) => isSamePlace(name, place));
}

/** True for a reading at a weak spot, or at a place that is none of the open part by its name. */
export function isOffOpenPart(reading: Reading, weakSpots?: readonly string[]): boolean {
	return placeKind(reading.place) !== 'open' || isAtWeakSpot(reading, weakSpots);
}

/** A core that was sound off the open part says nothing of the rest; a bad one is feared of it too. */
export function withoutFarComfort(reading: Reading, weakSpots?: readonly string[]): Reading {
	const isComfort = reading.core === 'sound' && isOffOpenPart(reading, weakSpots);
	return isComfort ? { ...reading, core: null } : reading;
}

/** True where the ice has broken at the reading's place, on its day or later up to `until`. */
export function hasBrokenSince(
	{ on, place }: Reading,
	others: readonly Reading[],
	until: IsoDate
): boolean {
	return others.some(
		(other) =>
			other.kind === 'wentThrough' &&
			other.on >= on &&
			other.on <= until &&
			isSamePlace(other.place, place)
	);
}
