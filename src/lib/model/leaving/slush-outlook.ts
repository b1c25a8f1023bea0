import type { IsoDate } from '../calendar.ts';
import { floodAhead, type FloodDay } from '../flood-ahead.ts';
import { snowResistance_m2K_W } from '../frost.ts';
import type { Parameters } from '../parameters.ts';
import { frostToFreeze_degCd, waterFraction } from '../slush.ts';

/** Slush of a site, and when it is frozen. */
export interface SlushOutlook {
	/** Depth at a random spot: a tenth has less than p10, a tenth more than p90. */
	p10_m: number;
	p50_m: number;
	p90_m: number;
	/** Further snow that floods the sheet; `null` without ice. */
	floodsWith_m: number | null;
	/** The first day on which the forecast floods it, as likely as not; `null` without one. */
	floodFrom: IsoDate | null;
	/** Frost that the depth to go by takes to freeze under the snow that lies on it; `null` without slush. */
	needs_degCd: number | null;
	/** First day on which half, and nine in ten, of the spots have none; `null`: not in the days told. */
	frozenBy: IsoDate | null;
	surelyFrozenBy: IsoDate | null;
}

/** Less is the wet foot of the snow. Our choice. */
export const LEAST_SLUSH_m = 0.005;

/**
 * How deep the slush is, what frost it takes, and when that has come.
 *
 * The days come from the ensemble, with the snow that falls and the floods that it brings; the frost by
 * the layered conduction law of the slush under today's snow, its film included:
 *
 *   FDD = ρ_w φ L (z²/(2 k_w) + z (1/H + h_s/k_s))/86400
 *
 * Derived [C]: ice-science 3.6. z is the median depth, or where half of the spots have none the 90 % one.
 */
export function slushOutlook(
	days: readonly FloodDay[],
	asOf: IsoDate,
	snow: { snow_m: number; snowDensity_kg_m3: number },
	floodsWith_m: number | null,
	p: Parameters
): SlushOutlook | null {
	const today = days.find(({ on }) => on === asOf)?.slush_m;
	if (!today || today.p50 === null || today.p10 === null || today.p90 === null) return null;
	const { p10, p50, p90 } = today;
	const depth_m = p50 >= LEAST_SLUSH_m ? p50 : p90;
	const hasSlush = depth_m >= LEAST_SLUSH_m;
	const first = (quantile: 'p50' | 'p90') =>
		days.find(({ on, slush_m }) => on >= asOf && isFrozen(slush_m[quantile]))?.on ?? null;
	return {
		p10_m: p10,
		p50_m: p50,
		p90_m: p90,
		floodsWith_m,
		floodFrom: floodAhead({ days, asOf }, floodsWith_m, asOf)?.from ?? null,
		needs_degCd: hasSlush ? slushFrost_degCd(depth_m, snow, p) : null,
		frozenBy: hasSlush ? first('p50') : null,
		surelyFrozenBy: hasSlush ? first('p90') : null
	};
}

function isFrozen(depth_m: number | null): boolean {
	return depth_m !== null && depth_m < LEAST_SLUSH_m;
}

/** Snow as cold as the law of its conduction holds for: milder snow lets slush freeze sooner. */
const AS_LAW = 1;

/** Frost that freezes slush under the snow that lies on it, film of air included. */
export function slushFrost_degCd(
	depth_m: number,
	snow: { snow_m: number; snowDensity_kg_m3: number },
	p: Parameters
): number {
	const cover_m2K_W = 1 / p.exchange_W_m2K + snowResistance_m2K_W(snow, AS_LAW, p);
	return frostToFreeze_degCd(depth_m, waterFraction(p.slushMatrix_kg_m3), cover_m2K_W);
}
