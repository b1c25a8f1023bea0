import type { Parameters } from './parameters.ts';

/**
 * The one set of values that the ice model runs with at every lake.
 *
 * "Fitted" values were fitted together to 516 growth readings, 118 decay readings and 106 ice-outs of
 * five measured lakes (northern Wisconsin and eastern Finland), within the range that stands beside
 * each. The others were set beforehand.
 */
export interface Fitted extends Omit<Parameters, 'exchange_W_m2K' | 'snowKeptFraction'> {
	readonly exchangeSheltered_W_m2K: number;
	readonly exchangeExposed_W_m2K: number;
	readonly keptSheltered: number;
	readonly keptExposed: number;
}

export const FITTED: Fitted = {
	exchangeSheltered_W_m2K: 10, // fitted, 10 to 30 [R] [AshtonLakeIce]
	exchangeExposed_W_m2K: 27, // fitted, 10 to 30 [R] [AshtonLakeIce]
	// Above 1 where more falls than gauges and reanalyses report: they catch 10 to 50 % too little
	// snow in wind [Goodison1998] [M-hi].
	keptSheltered: 1.2, // fitted, 0.5 to 1.2
	keptExposed: 0.95, // fitted, 0.4 to 1.2
	waterHeat_W_m2: 1.9, // fitted, 0.5 to 4; 0 to 5 in the quiet part of a lake [M-med]
	// Fitted, 1.6 to 2.5. Lake snow insulates about half as well as land snow [R] [Sturm2003], and
	// other laws give 1.8 times the conductivity of the base [Yen1981]. At the temperature of that law;
	// snow under milder air conducts more, by `snow-warmth.ts`.
	snowConductivityRatio: 2.2,
	settledSnow_kg_m3: 236, // fitted, 200 to 350 [M-hi]
	settling_h: 100, // [M-med] [Verseghy1991]
	settlingCold_1_K: 0.025, // fitted, 0 to 0.08: half the effect in [Anderson1976] [M-med]
	thinSnowFraction: 0.25, // fitted, 0 to 0.5
	thinSnowRatio: 0.27, // fitted, 0.15 to 0.35: a sheet floats settled snow of a third of itself [C]
	wetting_kg_m2degCd: 6, // fitted, 2 to 7; a degree-day factor is 2 to 6 [M-hi] [Hock2003]
	wetSnow_kg_m3: 450, // wet or melting snow 350 to 500 [M-hi]
	snowMelt_kg_m2degCd: 2.1, // fitted, 2 to 6 [M-hi] [Hock2003]
	refreezeFraction: 0.62, // fitted, 0.1 to 1: lasting melt goes by the day's mean
	soakedFraction: 0.76, // fitted, 0.5 to 1 [M-lo]
	slushMatrix_kg_m3: 390, // fitted, 300 to 550: settled snow, up to 2 times compacted [M-med]
	snowSpreadFraction: 0.18, // fitted, 0.02 to 0.6
	flooding_d: 0.75, // fitted, 0.5 to 20, through cracks [M-lo]
	iceMelt_m_degCd: 0.0031, // fitted, 0.003 to 0.010 [M-med]
	cloudFraction: 0.44, // fitted, 0.4 to 0.9 [M-med]
	snowAlbedo: 0.71, // fitted, 0.6 to 0.85: melting to settled snow [M-med]
	whiteAlbedo: 0.6, // fitted, 0.3 to 0.6 [M-med]
	clearAlbedo: 0.26, // fitted, 0.1 to 0.45 [M-med]
	insideFraction: 0.235, // fitted, 0.2 to 0.5 of what bare ice absorbs [M-med]
	belowFraction: 0.21, // fitted, 0 to 0.5 [M-lo]
	skyLoss_W_m2: 17, // fitted, 0 to 40: a winter month loses 10 to 60 to the sky, by cloud [M-med]
	breakUp_m: 0.07 // fitted, 0.03 to 0.3
};
