import { isTemperatureRole } from '../../cells/units.ts';
import type { Fault } from '../contract.ts';
import type { Mapped } from '../read/mapped.ts';
import type { Mapping } from '../schema.ts';
import { coldDoubt } from './cold-doubt.ts';
import { snowDoubt } from './snow-doubt.ts';
import type { UnitDoubt } from './unit-doubt.ts';

/** Why nothing of an answer may be used: temperatures in a wrong unit make ice that is not there. */
export function condemnedBy(
	mapping: Mapping,
	{ hours, days }: Pick<Mapped, 'hours' | 'days'>,
	doubts: readonly UnitDoubt[]
): Fault[] {
	const ofTemperature = doubts.filter(({ role }) => isTemperatureRole(role));
	const means = days.map(({ air_degC, min_degC, max_degC, snowfall_kg_m2 }) => ({
		air_degC:
			air_degC ?? (min_degC === null || max_degC === null ? null : (min_degC + max_degC) / 2),
		snowfall_kg_m2
	}));
	const times = [...hours, ...means];
	const length_d = days.length > 0 ? days.length : Math.round(hours.length / 24);
	const others = [snowDoubt(mapping, times), coldDoubt(mapping, times, length_d)];
	return [...ofTemperature.map(({ fault }) => fault), ...others.filter((fault) => fault !== null)];
}
