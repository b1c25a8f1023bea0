import { unitsFor, type ColumnRole } from '../weather/cells/units.ts';

const ROLES: readonly ColumnRole[] = [
	'time',
	'date',
	'clock',
	'air',
	'min',
	'max',
	'precipitation',
	'snowfall',
	'landSnow',
	'wind',
	'ignore'
];

/** What a column of a weather file can be corrected to: each role with its units or date forms. */
export function columnChoices(): { role: ColumnRole; units: readonly string[] }[] {
	return ROLES.map((role) => ({ role, units: unitsFor(role) }));
}
