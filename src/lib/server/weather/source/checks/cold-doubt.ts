import { fahrenheit } from '#lib/model/units.ts';
import type { Fault } from '../contract.ts';
import type { Mapping } from '../schema.ts';

const YEAR_d = 300;
const WARMEST_degC = 8;

/** Degrees Celsius taken for Fahrenheit make every day too cold, and the ice too thick. */
export function coldDoubt(
	mapping: Mapping,
	times: readonly { air_degC: number | null }[],
	days: number
): Fault | null {
	const unit = mapping.values.air?.unit ?? mapping.values.max?.unit;
	if (unit !== '°F' || days < YEAR_d) return null;
	const known = times.map(({ air_degC }) => air_degC).filter((value) => value !== null);
	const warmest = known.reduce((most, value) => Math.max(most, value), -Infinity);
	if (known.length === 0 || warmest > WARMEST_degC) return null;
	const text = `Read as °F, the warmest of ${days} days has only ${Math.round(fahrenheit(warmest))} °F: are they °C? Choose it if so, and try again. Nothing of this answer is used until then.`;
	return { code: 'unitDoubt', text };
}
