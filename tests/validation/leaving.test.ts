import { expect, test } from 'vitest';
import { slushFrost_degCd } from '#lib/model/leaving/slush-outlook.ts';
import { strengthLeft } from '#lib/model/leaving/strength.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { LAKE } from '../support/invented-winter.ts';

// σ/σ0 by the law of Bulatov (1970) as recalled [M-med], worked out by hand from it [C].
test.each([
	[0, 1],
	[0.05, 0.51],
	[0.1, 0.35],
	[0.2, 0.18],
	[0.3, 0.09],
	[0.6, 0],
	[1, 0]
])('with a liquid fraction of %s a share of %s of the strength is left', (liquid, left) => {
	expect(strengthLeft(liquid)).toBeCloseTo(left, 2);
});

// 10 cm of slush of which 0.6 is water, at -10 °C under a film of 20 W/m²K, derived from the layered
// conduction law [C]: 1.74 days bare, 28.2 days under 10 cm of snow of 0.0876 W/mK.
test.each([
	[0, 1.74, 0.002],
	[0.1, 28.2, 0.1]
])('under %s m of snow 10 cm of slush take %s days at -10 °C', (snow_m, days, within) => {
	const p = {
		...parametersFor(LAKE),
		exchange_W_m2K: 20,
		slushMatrix_kg_m3: 0.4 * 916,
		snowConductivityRatio: 1
	};
	const frost_degCd = slushFrost_degCd(0.1, { snow_m, snowDensity_kg_m3: 250 }, p);
	expect(Math.abs(frost_degCd / 10 - days)).toBeLessThan(within);
});
