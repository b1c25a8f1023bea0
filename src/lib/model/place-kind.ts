/** `edge`: a landing or a crack, where a reading lasts a day. `ridge`: where none supports anything. */
export type PlaceKind = 'open' | 'edge' | 'ridge';

const RIDGE = /\b(ridges?|heaves?)\b/i;
const EDGE = /\b(cracks?|seams?|landings?|launch|ramps?|access|approach|docks?|shore|beach)\b/i;

/** What a reading's place is by its name. A place without a name is the open part of the site. */
export function placeKind(place: string | null): PlaceKind {
	if (place === null) return 'open';
	if (RIDGE.test(place)) return 'ridge';
	return EDGE.test(place) ? 'edge' : 'open';
}
