import { expect, test } from 'vitest';
import { exposureFraction, treelessFraction } from '#lib/model/exposure.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const at = (latitude: number, elevation_m: number | null) =>
	treelessFraction({ ...INVENTED_LAKE, latitude, elevation_m });

const sized = (area_km2: number | null) => ({ ...INVENTED_LAKE, area_km2 });

test('a small sheltered lake exchanges less heat and keeps more snow than a wide one', () => {
	const bog = parametersFor(sized(0.01));
	const wide = parametersFor(sized(300));
	expect(bog.exchange_W_m2K).toBeLessThan(wide.exchange_W_m2K);
	expect(bog.snowKeptFraction).toBeGreaterThan(wide.snowKeptFraction);
});

test('exposure rises evenly with area and is bounded', () => {
	const areas = [0, 0.001, 0.01, 0.1, 1, 10, 100, 80_000];
	const exposures = areas.map((area) => exposureFraction(sized(area)));
	expect(exposures).toEqual(exposures.toSorted((a, b) => a - b));
	expect(exposures[0]).toBe(0);
	expect(exposureFraction(sized(1))).toBeCloseTo(0.5, 12);
	expect(exposures.at(-1)).toBeLessThanOrEqual(1);
});

test('an unknown area is a middle one', () => {
	const unknown = exposureFraction(sized(null));
	expect(unknown).toBeGreaterThan(exposureFraction(sized(0.1)));
	expect(unknown).toBeLessThan(exposureFraction(sized(1)));
});

test('wind strips lakes above the forest, which ends lower toward the pole', () => {
	expect(at(40, 3600)).toBeGreaterThan(0.8);
	expect(at(46, 500)).toBeLessThan(0.01);
	expect(at(69, 720)).toBeGreaterThan(0.8);
	expect(at(46, null)).toBeLessThan(0.01);
	const high = parametersFor({ ...sized(0.1), latitude: 40, elevation_m: 3800 });
	expect(high.snowKeptFraction).toBeLessThan(0.6 * parametersFor(sized(300)).snowKeptFraction);
});

test('every parameter is a finite number, zero or more', () => {
	for (const value of Object.values(parametersFor(sized(null)))) {
		expect(Number.isFinite(value)).toBe(true);
		expect(value).toBeGreaterThanOrEqual(0);
	}
});
