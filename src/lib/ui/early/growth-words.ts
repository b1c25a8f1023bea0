import type { IsoDate } from '#lib/model/calendar.ts';
import type { EarlyGrowth, EarlyLoad } from '#lib/model/early/growth.ts';
import { shortDay } from '../format/day.ts';
import { degreeDays, temperature } from '../format/degrees.ts';
import { rate, requirement, thickness } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { inTenAtLeast, inTenAtMost } from './chance-words.ts';

/** A warm spell of less is not worth a word. */
const HARDLY = 0.05;
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** @example weekday('2026-11-28') // => 'Sat 28 Nov' */
export function weekday(on: IsoDate): string {
	return `${WEEKDAYS[new Date(`${on}T00:00:00Z`).getUTCDay()]} ${shortDay(on)}`;
}

/** True while the day's own rules ask for more than ice alone would meet: frost does not end them. */
export function isHeldBack({
	status,
	required_m,
	base_m
}: Pick<EarlyLoad, 'status' | 'required_m' | 'base_m'>): boolean {
	return status === 'withheld' || (required_m ?? 0) > (base_m ?? 0);
}

/** What a load asks for today, and otherwise; empty where only an engineer can say. */
export function asksWords(
	{ required_m, base_m }: Pick<EarlyLoad, 'required_m' | 'base_m'>,
	units: Units
): string {
	if (required_m === null || base_m === null) return '';
	const now = requirement(required_m, units);
	return required_m > base_m
		? `, asks ${now} now; the days are for the ${requirement(base_m, units)} it asks otherwise`
		: `, asks ${now}`;
}

/** Frost until a load's chart minimum, and what the forecast brings of it. */
export function frostSentence(
	load: Pick<EarlyLoad, 'frostToGo_degCd'>,
	forecast: EarlyGrowth['forecast'],
	units: Units
): string | null {
	if (load.frostToGo_degCd === null) return null;
	const { estimate, bound } = load.frostToGo_degCd;
	if (bound <= 0) return 'No more frost is needed, by estimate and lower bound.';
	const more = (amount_degCd: number) => degreeDays(Math.ceil(amount_degCd), units);
	const needs =
		estimate <= 0
			? `The estimate has it; the lower bound needs ${more(bound)} more frost`
			: `It takes ${more(estimate)} more frost by the estimate, ${more(bound)} by the lower bound`;
	const brings =
		forecast === null
			? ''
			: `; the forecast brings ${degreeDays(Math.floor(forecast.frost_degCd), units)} by ${shortDay(forecast.to)}`;
	return `${needs}${brings}.`;
}

/** When the coming days bring it: as likely as not, and nine in ten. */
export function whenSentence(
	{ base_m, expectedFrom, likelyFrom }: Pick<EarlyLoad, 'base_m' | 'expectedFrom' | 'likelyFrom'>,
	{ now, snowKnown }: { now: IsoDate; snowKnown: boolean }
): string {
	if (base_m === null) return 'Only an ice engineer can say.';
	if (!snowKnown) return 'No day is named while the snow on the ice is not known.';
	if (expectedFrom === null) return 'As likely as not on no day told.';
	const from = (on: IsoDate) => `${on <= now ? 'since' : 'from'} ${shortDay(on)}`;
	return likelyFrom === null
		? `As likely as not ${from(expectedFrom)}, nine in ten on no day told.`
		: `As likely as not ${from(expectedFrom)}, nine in ten ${from(likelyFrom)}.`;
}

/** The chance for a day of the weekend. */
export function weekendWords({ on, pThickness, pThaw }: EarlyLoad['weekend'][number]): string {
	const met = pThickness === null ? 'not told' : inTenAtLeast(pThickness);
	const thaw = (pThaw ?? 0) < HARDLY ? '' : `, a warm spell ${inTenAtMost(pThaw ?? 0)}`;
	return `${weekday(on)}: ${met}${thaw}`;
}

/** What further snow would do to the growth, by heat through the layers. */
export function ratesSentence(rates: EarlyGrowth['rates'], units: Units): string | null {
	const [now, ...more] = rates?.rows ?? [];
	if (!rates || now === undefined) return null;
	const cuts = more.map(
		({ moreSnow_m, growth_m_d }) =>
			`${requirement(moreSnow_m, units)} of new snow ${rate(growth_m_d, units)}`
	);
	return `At ${temperature(rates.air_degC, units)}, the mean of the days to come, the sheet grows ${rate(now.growth_m_d, units)}; under ${cuts.join(', under ')}.`;
}

/** What the forecast's snow does by its end. */
export function snowSentence(growth: Pick<EarlyGrowth, 'snow' | 'forecast'>, units: Units): string {
	if (growth.forecast === null)
		return 'No forecast counts at present, so what snow will fall is not told.';
	if (growth.snow === null) return 'The forecast tells hardly any snow.';
	const { on, fall_kg_m2, with: with_, without } = growth.snow;
	return `The forecast tells ${Math.round(fall_kg_m2)} mm of snow as water. With it ${thickness(with_.p50_m, units)} of ice are estimated for ${shortDay(on)}, lower bound ${thickness(with_.bound_m, units)}; without it they would be ${thickness(without.p50_m, units)} and ${thickness(without.bound_m, units)}.`;
}
