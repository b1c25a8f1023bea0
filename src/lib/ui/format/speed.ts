import type { Units } from '../units-setting.ts';

const KMH_PER_M_S = 3.6;
const MPH_PER_M_S = 3600 / 1609.344;
/** Keeps 25 km/h at 25 although its double may be a hair off. */
const HAIR = 1e-6;

/** A speed to stay under, rounded down. @example speed(25 / 3.6, metric) // => '25 km/h' */
export function speed(m_s: number, units: Units): string {
	return `${speedNumber(m_s, units)} ${speedUnit(units)}`;
}

/** The same without its unit. */
function speedNumber(m_s: number, units: Units): string {
	const perUnit = units.measure === 'metric' ? KMH_PER_M_S : MPH_PER_M_S;
	return String(Math.floor(m_s * perUnit + HAIR));
}

function speedUnit(units: Units): 'km/h' | 'mph' {
	return units.measure === 'metric' ? 'km/h' : 'mph';
}
