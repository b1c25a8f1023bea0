import { celsius } from '#lib/model/units.ts';
import { DATE_FORMS } from './dates.ts';

export type ColumnRole =
	| 'time'
	| 'date'
	| 'clock'
	| 'air'
	| 'min'
	| 'max'
	| 'precipitation'
	| 'snowfall'
	| 'landSnow'
	| 'wind'
	| 'ignore';

/** A column that holds a measured value. */
export type ValueRole = Exclude<ColumnRole, 'time' | 'date' | 'clock' | 'ignore'>;

export const VALUE_ROLES = [
	'air',
	'min',
	'max',
	'precipitation',
	'snowfall',
	'landSnow',
	'wind'
] as const satisfies readonly ValueRole[];

/** To SI; `hours` is the length of the record's step, for rates. */
type Convert = (value: number, hours: number) => number;
type Conversions = Readonly<Record<string, Convert>>;

const TEMPERATURE: Conversions = {
	'°C': (value) => value,
	'°F': (value) => celsius(value),
	K: (value) => value - 273.15,
	'0.1 °C': (value) => value / 10
};

/** 1 mm of water is 1 kg/m². `rain` is rain alone, to which the snowfall is added. */
const WATER: Conversions = {
	mm: (value) => value,
	cm: (value) => value * 10,
	in: (value) => value * 25.4,
	m: (value) => value * 1000,
	'0.1 mm': (value) => value / 10,
	'mm/h': (value, hours) => value * hours,
	'mm rain': (value) => value,
	'in rain': (value) => value * 25.4
};

/**
 * Fresh depth becomes water at ten to one, as observers without a gauge do. Common practice, no
 * source; `water` is a measured water equivalent and is taken as it is.
 */
const SNOWFALL: Conversions = {
	cm: (value) => value,
	mm: (value) => value / 10,
	in: (value) => value * 2.54,
	m: (value) => value * 100,
	'mm water': (value) => value,
	'cm water': (value) => value * 10,
	'in water': (value) => value * 25.4,
	'm water': (value) => value * 1000
};

const DEPTH: Conversions = {
	cm: (value) => value / 100,
	mm: (value) => value / 1000,
	m: (value) => value,
	in: (value) => value * 0.0254
};

const SPEED: Conversions = {
	'm/s': (value) => value,
	'km/h': (value) => value / 3.6,
	mph: (value) => value * 0.44704,
	kn: (value) => (value * 1852) / 3600
};

const OF_ROLE: Readonly<Record<ValueRole, Conversions>> = {
	air: TEMPERATURE,
	min: TEMPERATURE,
	max: TEMPERATURE,
	precipitation: WATER,
	snowfall: SNOWFALL,
	landSnow: DEPTH,
	wind: SPEED
};

/** Parts of a date that stands in three columns. */
export const DATE_PARTS = ['year', 'month', 'day'] as const;

/** The units, or for a date the forms, that a column of this role can have. */
export function unitsFor(role: ColumnRole): readonly string[] {
	if (role === 'time') return DATE_FORMS;
	if (role === 'date') return [...DATE_FORMS, ...DATE_PARTS];
	return isValueRole(role) ? Object.keys(OF_ROLE[role]) : [];
}

export function isValueRole(role: ColumnRole): role is ValueRole {
	return Object.hasOwn(OF_ROLE, role);
}

export function isTemperatureRole(role: ColumnRole): role is 'air' | 'min' | 'max' {
	return role === 'air' || role === 'min' || role === 'max';
}

/** A value in the model's own unit. @throws RangeError when the role does not know the unit. */
export function toSi(role: ValueRole, unit: string, value: number, step_h: number): number {
	const convert = Object.hasOwn(OF_ROLE[role], unit) ? OF_ROLE[role][unit] : undefined;
	if (!convert)
		throw new RangeError(
			`unit of ${role} must be one of ${unitsFor(role).join(', ')}, got "${unit}"`
		);
	return convert(value, step_h);
}
