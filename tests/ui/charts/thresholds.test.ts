import { expect, test } from 'vitest';
import { grouped, markText, thresholds } from '#lib/ui/charts/thresholds.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

function picture(end: number, carried_m = 0) {
	return { end, height_px: 300, carried_m };
}

test('loads that ask for the same share one line, the least first', () => {
	const marks = [
		{ mark: 'Car', required_m: 0.4 },
		{ mark: 'Sled', required_m: 0.25 },
		{ mark: 'Quad', required_m: 0.25 }
	];
	expect(grouped(marks, METRIC)).toEqual([
		{ names: new Set(['Sled', 'Quad']), required_m: 0.25 },
		{ names: new Set(['Car']), required_m: 0.4 }
	]);
});

test('a load for an engineer has no line', () => {
	expect(grouped([{ mark: 'Truck', required_m: null }], METRIC)).toEqual([]);
});

test('a long name is cut, its number never', () => {
	const [mark] = grouped([{ mark: 'Three-quarter to one-ton truck', required_m: 0.51 }], METRIC);
	expect(mark && markText(mark, METRIC)).toBe('51 cm Three-quarter to one-…');
});

test('names that do not fit are counted, and no name comes twice', () => {
	const marks = ['car', 'pickup', 'pickup', 'the green tractor'].map((mark) => ({
		mark,
		required_m: 0.4
	}));
	const [both] = grouped(marks.slice(0, 3), METRIC);
	expect(both && markText(both, METRIC)).toBe('40 cm car, pickup');
	const [all] = grouped(marks, METRIC);
	expect(all && markText(all, METRIC)).toBe('40 cm car and 2 more');
});

test('what the ice carries is named at the last day, what it does not at the first', () => {
	const marks = [
		{ mark: 'On foot', required_m: 0.15 },
		{ mark: 'Car', required_m: 0.4 }
	];
	const sides = thresholds(marks, METRIC, picture(50, 0.25)).map(({ side }) => side);
	expect(sides).toEqual(['end', 'start']);
});

test('only what is within the picture gets a line, in the unit of the picture', () => {
	const marks = [
		{ mark: 'On foot', required_m: 0.15 },
		{ mark: 'Car', required_m: 0.4 }
	];
	expect(thresholds(marks, IMPERIAL, picture(12))).toMatchObject([{ label: '6 in On foot' }]);
	expect(thresholds(marks, METRIC, picture(50)).map(({ value }) => value)).toEqual([15, 40]);
});

test('labels of close lines move apart', () => {
	const marks = [
		{ mark: 'A', required_m: 0.2 },
		{ mark: 'B', required_m: 0.21 }
	];
	const [a, b] = thresholds(marks, METRIC, picture(100));
	// One centimetre is 3 pixels here: 17 are needed between the two.
	expect((a?.shift_px ?? 0) - (b?.shift_px ?? 0)).toBeCloseTo(14, 6);
});

test('a load near the top is named under the words for the days', () => {
	const marks = [{ mark: 'Shelter', required_m: 0.6 }];
	const [mark] = thresholds(marks, METRIC, picture(70));
	const line_px = 300 * (1 - 60 / 70);
	const middle_px = line_px - 17 / 2 + (mark?.shift_px ?? 0);
	expect(middle_px - 17 / 2).toBeGreaterThanOrEqual(38);
	expect(thresholds(marks, METRIC, picture(120))[0]?.shift_px).toBe(0);
});
