import type { Fault } from '../contract.ts';
import type { Mapping } from '../schema.ts';

interface Fallen {
	air_degC: number | null;
	snowfall_kg_m2: number | null;
}

const SNOW_TOO_WARM_degC = 8;
const MEASURABLE_kg_m2 = 0.5;
const FEWEST = 3;

/** Snow that falls again and again in the warmth shows that the degrees are others. */
export function snowDoubt(mapping: Mapping, times: readonly Fallen[]): Fault | null {
	const snowy = times.filter(
		({ air_degC, snowfall_kg_m2 }) => air_degC !== null && (snowfall_kg_m2 ?? 0) >= MEASURABLE_kg_m2
	);
	const warm = snowy.filter(({ air_degC }) => (air_degC ?? 0) > SNOW_TOO_WARM_degC);
	if (warm.length < FEWEST || warm.length * 4 < snowy.length) return null;
	const unit = mapping.values.air?.unit ?? mapping.values.max?.unit ?? '°C';
	const text = `Snow falls at more than ${SNOW_TOO_WARM_degC} °C in this answer, with its temperatures read as ${unit}: ${unit === '°C' ? 'are they °F? ' : ''}Choose the right unit, or leave the snowfall out if it is what is wrong. Nothing of this answer is used until then.`;
	return { code: 'unitDoubt', text };
}
