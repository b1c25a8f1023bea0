import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import { ifPossible } from '../../cells/plausible.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { HourValues } from './spread.ts';

export type Roles = Partial<Record<ValueRole, HourValues>>;

/** Hours from the values of their roles. `isRainAlone`: the snowfall is added to the precipitation. */
export function hoursOf(roles: Roles, isRainAlone: boolean): WeatherHour[] {
	const starts = new Set(Object.values(roles).flatMap((values) => [...values.keys()]));
	return [...starts].toSorted((a, b) => a - b).map((at_s) => hourAt(at_s, roles, isRainAlone));
}

function hourAt(at_s: number, roles: Roles, isRainAlone: boolean): WeatherHour {
	const value = (role: ValueRole) => roles[role]?.get(at_s) ?? null;
	const fallen = value('precipitation');
	const snowfall = value('snowfall');
	return {
		at_s,
		air_degC: value('air') ?? middle(value('min'), value('max')),
		precipitation_kg_m2: isRainAlone ? totalOf(fallen, snowfall, 'hourly') : fallen,
		snowfall_kg_m2: snowfall,
		landSnow_m: value('landSnow'),
		wind_m_s: value('wind')
	};
}

function middle(min: number | null, max: number | null): number | null {
	return min === null || max === null ? null : (min + max) / 2;
}

/** Rain and snow together, unknown where one of them is. */
export function totalOf(
	rain: number | null,
	snow: number | null,
	step: 'daily' | 'hourly'
): number | null {
	const sum = rain === null || snow === null ? null : rain + snow;
	return ifPossible('precipitation', sum, step);
}
