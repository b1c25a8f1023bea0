import { expect, test } from 'vitest';
import { parametersFor } from '#lib/model/parameters.ts';
import { seededRandom } from '#lib/model/ensemble/random.ts';
import { bendParameters, drawTraits, takeParameters } from '#lib/model/ensemble/traits.ts';
import { UNCERTAIN } from '#lib/model/ensemble/uncertain.ts';
import { correlation, mean, median, spread } from '../../support/invented-ensemble.ts';
import { INVENTED_LAKE } from '../../support/seeded-winter.ts';

const BASE = parametersFor(INVENTED_LAKE);
const COUNT = 2000;
const column = (arrays: readonly Float64Array[], k: number) => arrays[k] ?? new Float64Array();

/** Traits that are nothing but these values of the site. */
function only(k: number, values: number[]) {
	const zeros = () => UNCERTAIN.map(() => new Float64Array(values.length));
	const site = zeros();
	site[k] = Float64Array.from(values);
	return { site, winter: zeros() };
}

test('members without traits have the parameters of their lake', () => {
	const bent = bendParameters(BASE, only(0, [0]));
	const taken = { ...BASE };
	takeParameters(bent, 0, taken);
	for (const { name } of UNCERTAIN) expect(taken[name]).toBeCloseTo(BASE[name], 9);
});

test('each trait bends the parameter that it is named for, and only that one', () => {
	UNCERTAIN.forEach(({ name, scale, site }, k) => {
		const taken = { ...BASE };
		takeParameters(bendParameters(BASE, only(k, [1])), 0, taken);
		const odds = (p: number) => (scale === 'log' ? p : p / (1 - p));
		expect(Math.log(odds(taken[name]) / odds(BASE[name]))).toBeCloseTo(site, 9);
		for (const other of UNCERTAIN)
			if (other.name !== name) expect(taken[other.name]).toBeCloseTo(BASE[other.name], 9);
	});
});

test('shares stay between 0 and 1 however far they are bent', () => {
	UNCERTAIN.forEach(({ name, scale }, k) => {
		if (scale !== 'share') return;
		for (const value of bendParameters(BASE, only(k, [-30, 30]))[name]) {
			expect(value).toBeGreaterThan(0);
			expect(value).toBeLessThan(1);
		}
	});
});

test('drawn parameters lie about those of the lake with the spread that is stated', () => {
	const bent = bendParameters(BASE, drawTraits(COUNT, seededRandom(3)));
	UNCERTAIN.forEach(({ name, scale, site, winter }) => {
		if (scale !== 'log') return;
		const logs = bent[name].map(Math.log);
		expect(median(logs)).toBeCloseTo(Math.log(BASE[name]), 1);
		expect(spread(logs) / Math.hypot(site, winter)).toBeCloseTo(1, 1);
	});
});

test('what a site taught is drawn with its mean, spread and correlation', () => {
	const last = UNCERTAIN.length - 1;
	const mean_ = UNCERTAIN.map((_, k) => (k === 0 ? 1.5 : 0));
	const root: number[][] = UNCERTAIN.map((_, k) =>
		UNCERTAIN.map((_, j) => (j === k ? 0.5 : 0)).slice(0, k + 1)
	);
	root[last] = [0.4, ...UNCERTAIN.slice(2).map(() => 0), 0.3];
	const { site, winter } = drawTraits(COUNT, seededRandom(3), {
		mean: mean_,
		root,
		winters: 3,
		readings: 9
	});
	expect(mean(column(site, 0))).toBeCloseTo(1.5, 2);
	expect(spread(column(site, 0))).toBeCloseTo(0.5, 2);
	expect(spread(column(site, last))).toBeCloseTo(0.5, 1);
	expect(correlation(column(site, 0), column(site, last))).toBeCloseTo(0.8, 1);
	expect(spread(column(winter, 0)), 'the winter is as uncertain as ever').toBeCloseTo(1, 2);
});
