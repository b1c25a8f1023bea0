import type { EarlyIce } from '#lib/model/early/early-ice.ts';
import { WINDY_m_s } from '#lib/model/early/wind.ts';
import type { WindyDay } from '#lib/model/early/wind.ts';
import { shortDay } from '../format/day.ts';
import { requirement } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { inTenAtMost } from './chance-words.ts';

const HARDLY = 0.1;
const MPH_PER_M_S = 2.23694;

/** Wind that may have broken out young ice, or may. */
export function windSentences(
	{ wind, phase }: Pick<EarlyIce, 'wind' | 'phase'>,
	breaksBelow_m: number,
	units: Units
): string[] {
	const below = requirement(breaksBelow_m, units);
	const thin = wind.days.filter(({ pThin }) => pThin === null || pThin > HARDLY);
	const told = (source: WindyDay['source'], words: (days: string) => string): string[] => {
		const days = thin.filter((each) => each.source === source);
		return days.length === 0
			? []
			: [words(days.map((each) => dayWords(each, below, units)).join('; '))];
	};
	return [
		...told(
			'observed',
			(days) =>
				`Wind has blown over young ice: ${days}. Look whether it is still closed, and record it as opened again where it is not.`
		),
		...told(
			'forecast',
			(days) => `Wind is forecast that may break it out again: ${days}. The count then begins anew.`
		),
		...unknown(wind, phase === 'growing' && !wind.isObserved, units)
	];
}

function dayWords({ on, wind_m_s, pThin }: WindyDay, below: string, units: Units): string {
	const speed =
		units.measure === 'metric'
			? `${Math.round(wind_m_s)} m/s`
			: `${Math.round(wind_m_s * MPH_PER_M_S)} mph`;
	const thin = pThin === null ? '' : `, under ${below} with a chance of ${inTenAtMost(pThin)}`;
	return `${shortDay(on)} ${speed} in the mean${thin}`;
}

function unknown(
	{ isForecast, days }: EarlyIce['wind'],
	norBefore: boolean,
	units: Units
): string[] {
	if (isForecast && days.some(({ source }) => source === 'forecast')) return [];
	const least =
		units.measure === 'metric' ? `${WINDY_m_s} m/s` : `${Math.round(WINDY_m_s * MPH_PER_M_S)} mph`;
	if (!isForecast)
		return [
			`No wind to come is known here${norBefore ? ', nor any that has blown' : ''}: look at a wind forecast before the trip.`
		];
	return [`No day in the forecast has ${least} or more in the mean; gusts are not told.`];
}
