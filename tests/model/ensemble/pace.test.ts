import { expect, test } from 'vitest';
import { advancePaces, drawPaces, frostFactors } from '#lib/model/ensemble/pace.ts';
import { seededRandom } from '#lib/model/ensemble/random.ts';
import { correlation, mean, median, spread } from '../../support/invented-ensemble.ts';

const MEMBERS = 1000;

function run(days: number) {
	const paces = drawPaces(MEMBERS, seededRandom(11));
	const frosts: Float64Array[] = [];
	const thaws: Float64Array[] = [];
	const factors: Float64Array[] = [];
	for (let day = 0; day < days; day++) {
		advancePaces(paces);
		frosts.push(paces.frost.slice());
		thaws.push(paces.thaw.slice());
		factors.push(frostFactors(paces));
	}
	return { frosts, thaws, factors };
}

const { frosts, thaws, factors } = run(200);
const none = new Float64Array(MEMBERS);

test('paces stay standard normal through a winter', () => {
	expect(mean(frosts.map(spread))).toBeGreaterThan(0.97);
	expect(mean(frosts.map(spread))).toBeLessThan(1.03);
	// 5 standard errors of the mean of so many members
	for (const day of [...frosts, ...thaws])
		expect(Math.abs(mean(day))).toBeLessThan(5 / Math.sqrt(MEMBERS));
});

test('a pace keeps exp(-1/5) of itself from day to day and is forgotten after a month', () => {
	const kept = (lag: number) =>
		mean(frosts.slice(lag).map((day, i) => correlation(day, frosts[i] ?? none)));
	expect(kept(1)).toBeCloseTo(Math.exp(-1 / 5), 1);
	expect(kept(5)).toBeCloseTo(Math.exp(-1), 1);
	expect(Math.abs(kept(30))).toBeLessThan(0.03);
});

test('frost and thaw go their own ways', () => {
	const together = mean(frosts.map((day, i) => correlation(day, thaws[i] ?? none)));
	expect(Math.abs(together)).toBeLessThan(0.03);
});

test('members do not go in step: neighbours are no more alike than strangers', () => {
	const track = (i: number) => frosts.map((day) => day[i] ?? NaN);
	const alike = Array.from({ length: 100 }, (_, i) => correlation(track(i), track(i + 1)));
	expect(Math.abs(mean(alike))).toBeLessThan(0.06);
});

test('factors are above zero, and lie about one', () => {
	const all = factors.flatMap((day) => [...day]);
	expect(Math.min(...all.slice(0, 50_000))).toBeGreaterThan(0);
	// exp(s g - s²/4) with s 0.45: median exp(-s²/4), mean exp(s²/4)
	expect(median(all)).toBeCloseTo(0.9507, 1.5);
	expect(mean(all)).toBeCloseTo(1.0519, 1.5);
});
