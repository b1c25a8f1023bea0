import type { PlaceCheck } from '#lib/model/places/place-check.ts';
import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import { thickness } from '../format/length.ts';
import { counted } from '../format/number.ts';
import type { Units } from '../units-setting.ts';
import { listed } from './route-words.ts';

/** What a lake's list of weak spots says first. */
export function placesHeadline(
	spots: readonly { spot: Pick<WeakSpot, 'name'>; check: PlaceCheck }[],
	units: Units
): { main: string; rest: string } {
	if (spots.length === 0)
		return {
			main: 'No weak spots are on the list yet.',
			rest: 'That is no sign of there being none.'
		};
	const unknown = spots.filter(({ check }) => check.state !== 'counts');
	const known = spots.filter(({ check }) => check.state === 'counts');
	const thinnest = known.reduce<(typeof known)[number] | null>(
		(least, each) =>
			least === null || (each.check.effective_m ?? 0) < (least.check.effective_m ?? 0)
				? each
				: least,
		null
	);
	const least = thinnest
		? `The thinnest with holes that count is ${thinnest.spot.name}: ${thickness(thinnest.check.effective_m, units)} of clear ice.`
		: '';
	const all = counted(spots.length, 'weak spot');
	if (unknown.length === 0)
		return { main: `${all}, and all of them have holes that count.`, rest: least };
	const main =
		spots.length === unknown.length
			? `${all}, and of none is it known what ${spots.length === 1 ? 'it carries' : 'they carry'}.`
			: `${all}; of ${unknown.length} it is not known what they carry.`;
	const names = `Not known: ${listed(unknown.map(({ spot }) => spot.name))}.`;
	return { main, rest: [names, least].filter(Boolean).join(' ') };
}
