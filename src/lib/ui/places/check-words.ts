import type { IsoDate } from '#lib/model/calendar.ts';
import type { PlaceCheck } from '#lib/model/places/place-check.ts';
import { age, shortDay } from '../format/day.ts';
import { thickness } from '../format/length.ts';
import { counted } from '../format/number.ts';
import type { Units } from '../units-setting.ts';

/** What is known of a place by its own holes, in a sentence or two. */
export function checkWords(check: PlaceCheck, today: IsoDate, units: Units): string {
	const { state, lastOn, drilledOn, until } = check;
	const looked = lastOn === null ? '' : ` Last looked at ${age(lastOn, today)}.`;
	const last = drilledOn === null ? '' : `Its last hole, of ${shortDay(drilledOn)}, `;
	switch (state) {
		case 'counts':
			return `${counted(check.holes, 'hole')}, the thinnest counts as ${iceOf(check, units)}; until ${shortDay(until ?? today)} at most.`;
		case 'neverDrilled':
			return `Nobody has drilled here this winter.${looked}`;
		case 'tooOld':
			return `${last}counted as ${iceOf(check, units)}, and is too old to count.${looked}`;
		case 'thawed':
			return `${last}counted as ${iceOf(check, units)}, and it has thawed since.`;
		case 'weatherUnknown':
			return `${last}counted as ${iceOf(check, units)}, and the weather since is not known.`;
		case 'broke':
			return `Somebody went through here on ${shortDay(lastOn ?? today)}. Nothing counts until a later hole.`;
		case 'never':
			return drilledOn === null
				? `No hole supports anything here.${looked}`
				: `No hole supports anything here. ${last}counted as ${iceOf(check, units)}.`;
		case 'toldOnly':
			return `Only somebody else told of holes here: ${iceOf(check, units)}. They count against it, not for it.`;
	}
}

function iceOf({ effective_m, isHalved }: PlaceCheck, units: Units): string {
	const half = isHalved ? ' (layers not told apart: half)' : '';
	return `${thickness(effective_m, units)}${half}`;
}
