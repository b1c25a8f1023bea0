import type { Parameters } from '../parameters.ts';

/**
 * How a parameter is uncertain: by how much lakes of the same size and shelter differ (`site`), and
 * how much a lake differs from itself from winter to winter (`winter`). Standard deviations of the
 * logarithm, or of log(p/(1-p)) where the scale is `share`.
 */
export interface Uncertain {
	readonly name: keyof Parameters;
	readonly scale: 'log' | 'share';
	readonly site: number;
	readonly winter: number;
}

/**
 * What a member's parameters are drawn from.
 *
 * The centres are those of `fitted.ts`, bent by the lake. The spreads are wide enough for the
 * published range of each, which stands beside it, to lie within two standard deviations, so that
 * lakes unlike the measured ones are still inside; their common size was set so that 90 % bands hold
 * about 90 % of the readings of the measured winters, each lake left out.
 */
export const UNCERTAIN = [
	{ name: 'exchange_W_m2K', scale: 'log', site: 0.175, winter: 0.07 }, // 10 to 30 [R]
	{ name: 'snowKeptFraction', scale: 'log', site: 0.21, winter: 0.14 }, // half to all, gauge error [M-lo]
	{ name: 'snowConductivityRatio', scale: 'log', site: 0.14, winter: 0.07 }, // 1 to 2.5 [R]
	{ name: 'settledSnow_kg_m3', scale: 'log', site: 0.07, winter: 0.035 }, // 200 to 400 [M-hi]
	{ name: 'waterHeat_W_m2', scale: 'log', site: 0.35, winter: 0.14 }, // 0 to 5 W/m² [M-med]
	{ name: 'soakedFraction', scale: 'share', site: 0.28, winter: 0.21 },
	{ name: 'snowSpreadFraction', scale: 'log', site: 0.21, winter: 0.14 },
	{ name: 'snowMelt_kg_m2degCd', scale: 'log', site: 0.105, winter: 0.105 }, // 2 to 6 [M-hi]
	{ name: 'iceMelt_m_degCd', scale: 'log', site: 0.14, winter: 0.14 }, // 0.3 to 1.0 cm [M-med]
	{ name: 'cloudFraction', scale: 'log', site: 0.07, winter: 0.105 }
] as const satisfies readonly Uncertain[];

export type UncertainName = (typeof UNCERTAIN)[number]['name'];
