import type { IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';

/**
 * Mean wind of a day from which cracks, ridges and drifts are to be looked at again: force 5, a fresh
 * breeze, of Beaufort's scale begins at 8 m/s [M-hi]. That it is the line to draw is our choice.
 */
export const STRONG_WIND_m_s = 8;

/** Why a place is to be looked at again before anybody relies on its last check. */
export type LookAgain =
	| { code: 'wind'; on: IsoDate; wind_m_s: number; since: IsoDate }
	| { code: 'windNotKnown'; since: IsoDate }
	| { code: 'waterLevel'; water: 'river' | 'reservoir'; since: IsoDate };

/**
 * What may have changed a place since its last check: the windiest day since, where wind is known, and the
 * level of a river or a reservoir, which cannot be seen from here.
 *
 * Wind forms and moves ridges and breaks up thin sheets (SMHI [R], Wisconsin DNR [R2]); a change of level
 * closes a river or reservoir until it is checked (NWS Bismarck [R]). Nothing for a place that nobody
 * has checked: there the check itself is wanting.
 */
export function lookAgain(
	since: IsoDate | null,
	asOf: IsoDate,
	weather: readonly Pick<WeatherDay, 'on' | 'wind_m_s'>[],
	water: LakeFacts['water']
): LookAgain[] {
	if (since === null) return [];
	const days = weather.filter(({ on }) => on >= since && on <= asOf);
	const windiest = days.reduce<{ on: IsoDate; wind_m_s: number } | null>(
		(most, { on, wind_m_s }) =>
			wind_m_s !== null && wind_m_s > (most?.wind_m_s ?? -1) ? { on, wind_m_s } : most,
		null
	);
	return [
		...ofWind(windiest, since, asOf),
		...(water === 'lake' ? [] : [{ code: 'waterLevel' as const, water, since }])
	];
}

function ofWind(
	windiest: { on: IsoDate; wind_m_s: number } | null,
	since: IsoDate,
	asOf: IsoDate
): LookAgain[] {
	if (windiest === null) return since < asOf ? [{ code: 'windNotKnown', since }] : [];
	return windiest.wind_m_s >= STRONG_WIND_m_s ? [{ code: 'wind', ...windiest, since }] : [];
}
