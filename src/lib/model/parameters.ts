import { aboveTreelineFraction, exposureFraction } from './exposure.ts';
import type { LakeFacts } from './lake.ts';

/** What the ice model does not know from first principles, for one lake: a flat record of numbers. */
export interface Parameters {
	readonly exchange_W_m2K: number;
	readonly waterHeat_W_m2: number;
	readonly snowKeptFraction: number;
	readonly snowConductivityRatio: number;
	readonly settledSnow_kg_m3: number;
	readonly settling_h: number;
	readonly snowMelt_kg_m2degCd: number;
	readonly soakedFraction: number;
	readonly slushMatrix_kg_m3: number;
	readonly snowSpreadFraction: number;
	readonly flooding_d: number;
	readonly iceMelt_m_degCd: number;
	readonly cloudFraction: number;
	readonly snowAlbedo: number;
	readonly whiteAlbedo: number;
	readonly clearAlbedo: number;
	readonly insideFraction: number;
	readonly breakUp_m: number;
	readonly refreezeFraction: number;
	readonly skyLoss_W_m2: number;
}
export interface Priors {
	[k: string]: number;
}
export const FITTED = {
	exchangeSheltered: 8,
	exchangeExposed: 30,
	keptSheltered: 1.1,
	keptExposed: 1.091,
	waterHeat: 0,
	ratio: 2.375,
	settled: 267.638,
	settling: 100,
	snowMelt: 2,
	soaked: 1,
	matrix: 325.012,
	spread: 0.272,
	flooding: 2.476,
	iceMelt: 0.5,
	cloud: 0.65,
	snowAlbedo: 0.75,
	whiteAlbedo: 0.5,
	clearAlbedo: 0.3,
	inside: 0.4,
	breakUp: 0.1,
	refreeze: 0.596,
	sky: 40
};
export function parametersFor(lake: LakeFacts, f = FITTED): Parameters {
	const e = exposureFraction(lake);
	const treeless = aboveTreelineFraction(lake);
	const open = 1 - (1 - e) * (1 - treeless);
	return {
		exchange_W_m2K: f.exchangeSheltered + (f.exchangeExposed - f.exchangeSheltered) * open,
		snowKeptFraction:
			(f.keptSheltered + (f.keptExposed - f.keptSheltered) * open) * (1 - 0.5 * treeless),
		waterHeat_W_m2: f.waterHeat,
		snowConductivityRatio: f.ratio,
		settledSnow_kg_m3: f.settled,
		settling_h: f.settling,
		snowMelt_kg_m2degCd: f.snowMelt,
		soakedFraction: f.soaked,
		slushMatrix_kg_m3: f.matrix,
		snowSpreadFraction: f.spread,
		flooding_d: f.flooding,
		iceMelt_m_degCd: f.iceMelt / 100,
		cloudFraction: f.cloud,
		snowAlbedo: f.snowAlbedo,
		whiteAlbedo: f.whiteAlbedo,
		clearAlbedo: f.clearAlbedo,
		insideFraction: f.inside,
		breakUp_m: f.breakUp,
		refreezeFraction: f.refreeze,
		skyLoss_W_m2: f.sky
	};
}
