import type { LoadCase, Trailer } from '#lib/model/load-case.ts';
import { distance } from '#lib/ui/format/distance.ts';
import { mass } from '#lib/ui/format/mass.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** The rows of the published charts, by name, lightest first. */
export const USES: readonly { value: string; label: string }[] = [
	{ value: 'onFoot', label: 'on foot, one person' },
	{ value: 'group', label: 'a group on foot' },
	{ value: 'snowmobile', label: 'snowmobile' },
	{ value: 'atv', label: 'ATV or side-by-side' },
	{ value: 'car', label: 'car or small SUV' },
	{ value: 'lightTruck', label: 'light or medium truck' },
	{ value: 'heavyTruck', label: 'heavy-duty truck' },
	{ value: 'truckWithShelter', label: 'truck with a shelter, parked' }
];

/** A load's row, mass and circumstances in one line. */
export function loadWords(load: LoadCase, units: Units): string {
	const use = USES.find(({ value }) => value === load.use)?.label;
	return [
		mass(load.mass_kg, units),
		use
			? `held against the row “${use}”`
			: 'held against Gold’s formula and the charts’ rows for what is lighter',
		load.parked_h > 0 && `parked ${load.parked_h} h`,
		load.wetCracks === 1 && 'over a wet crack',
		load.wetCracks === 2 && 'over two wet cracks that cross',
		load.current && 'across moving water',
		load.group && 'with others close by',
		trailerWords(load.trailer, units),
		groupWords(load, units)
	]
		.filter(Boolean)
		.join(', ');
}

function trailerWords(trailer: Trailer | null, units: Units): string | null {
	if (trailer === null) return null;
	const where =
		trailer.apart_m === null ? 'right behind' : `kept ${distance(trailer.apart_m, units)} behind`;
	return `drawing ${mass(trailer.mass_kg, units)} ${where}`;
}

function groupWords({ count, spacing_m }: LoadCase, units: Units): string | null {
	if (count <= 1) return null;
	const kept = spacing_m === null ? 'close together' : `kept ${distance(spacing_m, units)} apart`;
	return `${count} of them ${kept}`;
}
