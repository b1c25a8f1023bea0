import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { Mapped } from '../read/mapped.ts';

type Times = Pick<Mapped, 'hours' | 'days'>;

/** Hours and days in which one role is unknown. */
export function withoutRole({ hours, days }: Times, role: ValueRole): Times {
	const field = FIELDS[role];
	if (field === undefined) return { hours, days };
	return {
		hours: hours.map((hour) => ({ ...hour, [field]: null })),
		days: days.map((day) => ({ ...day, [field]: null }))
	};
}

/** Temperatures are never left out alone: a wrong one condemns the answer. */
const FIELDS: Readonly<Partial<Record<ValueRole, Exclude<keyof WeatherHour, 'at_s'>>>> = {
	precipitation: 'precipitation_kg_m2',
	snowfall: 'snowfall_kg_m2',
	landSnow: 'landSnow_m',
	wind: 'wind_m_s'
};
