import { expect, test } from 'vitest';
import { grouped, markText, thresholds } from '#lib/ui/charts/thresholds.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

test('loads that ask for the same share one line, the least first', () => {
	const marks = [
		{ name: 'Car', required_m: 0.4 },
		{ name: 'Sled', required_m: 0.25 },
		{ name: 'Quad', required_m: 0.25 }
	];
	expect(grouped(marks, METRIC)).toEqual([
		{ names: ['Sled', 'Quad'], required_m: 0.25 },
		{ names: ['Car'], required_m: 0.4 }
	]);
});

test('a load for an engineer has no line', () => {
	expect(grouped([{ name: 'Truck', required_m: null }], METRIC)).toEqual([]);
});

test('a long name is cut, its number never', () => {
	const [mark] = grouped([{ name: 'Three-quarter to one-ton truck', required_m: 0.51 }], METRIC);
	expect(mark && markText(mark, METRIC)).toBe('51 cm Three-quarter to on…');
});

test('only what is within the picture gets a line, in the unit of the picture', () => {
	const marks = [
		{ name: 'On foot', required_m: 0.15 },
		{ name: 'Car', required_m: 0.4 }
	];
	expect(thresholds(marks, IMPERIAL, 12, 300)).toMatchObject([{ label: '6 in On foot' }]);
	expect(thresholds(marks, METRIC, 50, 300).map(({ value }) => value)).toEqual([15, 40]);
});

test('labels of close lines move apart', () => {
	const marks = [
		{ name: 'A', required_m: 0.2 },
		{ name: 'B', required_m: 0.21 }
	];
	const [a, b] = thresholds(marks, METRIC, 100, 300);
	// One centimetre is 3 pixels here: 17 are needed between the two.
	expect((a?.shift_px ?? 0) - (b?.shift_px ?? 0)).toBeCloseTo(14, 6);
});
