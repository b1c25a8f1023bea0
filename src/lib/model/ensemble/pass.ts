import { advanceDay } from '../day.ts';
import { copyForcing, type Forcing } from '../forcing.ts';
import { copyParameters, type Parameters } from '../parameters.ts';
import { hasIce, openSite, type SiteIce } from '../site-ice.ts';
import { dayRates } from '../step-rates.ts';
import type { Ensemble } from './begin.ts';
import type { EnsembleForcing, EnsembleWeatherDay } from './forcings.ts';
import { putMember, takeMember } from './members.ts';
import { advancePaces, frostFactors, thawFactors } from './pace.ts';
import { takeParameters } from './traits.ts';
import type { UncertainName } from './uncertain.ts';

/**
 * Parts of a day for a member, a quarter of the single season's. The sheet comes out 3 mm too thin in
 * the mean and at most 1.6 cm too thick: far inside the spread.
 */
const MEMBER_STEPS = 1;

const GAP_m = 0.01; // what a day without a temperature may have done. Our choice.

/** Carries every member that has frozen over through a day of its own weather. */
export function passDay(ensemble: Ensemble, day: EnsembleWeatherDay, index: number): void {
	const { startsOn, scenarioOf, gap, paces, unknownSnow } = ensemble;
	// Rates of the day hold for all members: the compiler sees to it that no uncertain parameter is in.
	const shared: Omit<Parameters, UncertainName> = ensemble.base;
	advancePaces(paces);
	const factors = { frost: frostFactors(paces), thaw: thawFactors(paces), unknownSnow };
	const weathers = day.forcings.map((weather) => ({
		weather,
		rates: dayRates(weather.forcing, shared, MEMBER_STEPS)
	}));
	const [first] = weathers;
	if (first === undefined) throw new RangeError('a day of the ensemble has no weather');
	const ice = openSite();
	const own = copyForcing(first.weather.forcing);
	eachMember(ensemble, ice, (i, parameters) => {
		if (index < (startsOn[i] ?? 0)) return;
		const { weather, rates } = weathers[scenarioOf[i] ?? 0] ?? first;
		setForcing(own, weather, factors, i);
		advanceDay(ice, own, rates, parameters);
		if (!weather.hasAir && hasIce(ice))
			ice.clear_m = Math.max(0, ice.clear_m + GAP_m * (gap[i] ?? 0));
	});
}

/** Lets something act on each member's ice, which is put where the model's processes work on it. */
export function eachMember(
	{ members, bent, base }: Ensemble,
	ice: SiteIce,
	act: (i: number, parameters: Parameters) => void
): void {
	const parameters = copyParameters(base);
	for (let i = 0; i < members.count; i++) {
		takeParameters(bent, i, parameters);
		takeMember(members, i, ice);
		act(i, parameters);
		putMember(members, i, ice);
	}
}

/** How many times the weather's frost, thaw and unreported snow each member has. */
type Factors = Readonly<Record<'frost' | 'thaw' | 'unknownSnow', Float64Array>>;

/** The day's weather as one member has it. */
function setForcing(
	own: Forcing,
	{ forcing, hasSnow }: EnsembleForcing,
	{ frost, thaw, unknownSnow }: Factors,
	i: number
): void {
	own.freezing_degCd = forcing.freezing_degCd * (frost[i] ?? 1);
	own.thawing_degCd = forcing.thawing_degCd * (thaw[i] ?? 1);
	own.air_degC = forcing.air_degC;
	own.warmFraction = forcing.warmFraction;
	const amount = hasSnow ? 1 : (unknownSnow[i] ?? 1);
	own.snowfall_kg_m2 = forcing.snowfall_kg_m2 * amount;
	own.rain_kg_m2 = forcing.rain_kg_m2 * amount;
	own.freshSnow_kg_m3 = forcing.freshSnow_kg_m3;
	own.sun_W_m2 = forcing.sun_W_m2;
}
