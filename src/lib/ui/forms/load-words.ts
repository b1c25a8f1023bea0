import type { LoadCase } from '#lib/model/load-case.ts';
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
			: 'held against Gold’s formula and the least of the charts',
		load.parked_h > 0 && `parked ${load.parked_h} h`,
		load.wetCracks === 1 && 'over a wet crack',
		load.wetCracks === 2 && 'over two wet cracks that cross',
		load.current && 'across moving water',
		load.group && 'in a group'
	]
		.filter(Boolean)
		.join(', ');
}
