import type { IsoDate } from '#lib/model/calendar.ts';
import { isSamePlace } from '#lib/model/places/place-name.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import { depthNumber } from '#lib/ui/format/length.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** As many as fit on two lines of a phone. */
const PLACES = 4;

/** Places that were named lately, the last first. Readings come by day. */
export function placesOf(readings: readonly Reading[]): string[] {
	const named = readings.flatMap(({ place }) => (place === null ? [] : [place])).toReversed();
	return [...new Set(named)].slice(0, PLACES);
}

/** Names of weak spots that are not offered yet: a hole belongs to one by its name alone. */
export function otherPlaces(
	spots: readonly { name: string }[],
	offered: readonly string[]
): string[] {
	return spots
		.map(({ name }) => name)
		.filter((name) => !offered.some((each) => isSamePlace(each, name)));
}

/** Where one is, going by the last hole of today; empty where nothing tells. */
export function placeOf(readings: readonly Reading[], today: IsoDate): string {
	return readings.findLast(({ on }) => on === today)?.place ?? '';
}

/** What the last hole showed, to be held beside what is typed now; `null` before the first. */
export function lastHole(readings: readonly Reading[]): Hole | null {
	return readings.findLast(({ holes }) => holes.length > 0)?.holes.at(-1) ?? null;
}

/** One thing of it as a tape shows it: centimetres typed once are no thousandths of an inch. */
export function lastText(measured_m: number | null, units: Units): string {
	return measured_m === null ? '' : depthNumber(measured_m, units);
}
