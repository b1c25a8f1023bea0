import { expect, test } from 'vitest';
import { columnDrawing, type ColumnInput } from '#lib/ui/charts/column-drawing.ts';
import { rulerTicks } from '#lib/ui/charts/ruler.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const LOADS = [0.15, 0.2, 0.25, 0.4, 0.51].map((required_m) => ({
	mark: `Load of ${required_m}`,
	required_m
}));

function column(changes: Partial<ColumnInput> = {}): ColumnInput {
	return {
		snow_m: 0.06,
		slush_m: 0,
		white_m: 0.09,
		clear_m: 0.22,
		totalLower_m: 0.24,
		counts: [{ who: 'on foot', at_m: 0.2 }],
		loads: LOADS,
		units: METRIC,
		...changes
	};
}

test('every layer is drawn to the same scale, snow above the zero of the ruler', () => {
	const { layers, zero } = columnDrawing(column({ slush_m: 0.03 }));
	expect(layers.map(({ kind }) => kind)).toEqual(['snow', 'slush', 'white', 'clear']);
	const perMetre = layers.map(
		({ height }, index) => height / ([0.06, 0.03, 0.09, 0.22][index] ?? 1)
	);
	for (const scale of perMetre) expect(scale).toBeCloseTo(perMetre[0] ?? 0, 6);
	expect(layers[2]?.y).toBeCloseTo(zero, 6);
});

test('the doubt lies between the bound and the estimate', () => {
	const { doubt, zero, layers } = columnDrawing(column());
	const end = (layers.at(-1)?.y ?? 0) + (layers.at(-1)?.height ?? 0);
	expect(doubt?.to).toBeCloseTo(end, 6);
	expect(((doubt?.from ?? 0) - zero) / ((doubt?.to ?? 0) - zero)).toBeCloseTo(0.24 / 0.31, 6);
});

test('the ruler reaches past the ice to the next load, and names what lies deeper', () => {
	const { labels, beyond } = columnDrawing(column());
	expect(labels.filter(({ kind }) => kind === 'mark').map(({ text }) => text)).toEqual([
		'15 cm Load of 0.15',
		'20 cm Load of 0.2',
		'25 cm Load of 0.25',
		'40 cm Load of 0.4'
	]);
	expect(beyond).toEqual(['51 cm Load of 0.51']);
});

test('open water has no layers, no doubt and no bound, and still a ruler', () => {
	const empty = {
		snow_m: 0,
		white_m: 0,
		clear_m: 0,
		totalLower_m: 0,
		counts: [{ who: 'on foot', at_m: 0 }]
	};
	const { layers, doubt, labels, ticks } = columnDrawing(column(empty));
	expect(layers).toEqual([]);
	expect(doubt).toBeNull();
	expect(labels.every(({ kind }) => kind === 'mark')).toBe(true);
	expect(ticks.length).toBeGreaterThan(4);
});

test.each([0, 0.01, 0.05, 0.3, 0.8, 1.5])('labels never overlap at %d m of ice', (ice_m) => {
	const input = column({
		snow_m: 0.004,
		slush_m: 0.003,
		white_m: ice_m * 0.02,
		clear_m: ice_m * 0.98,
		totalLower_m: ice_m * 0.7,
		counts: [
			{ who: 'on foot', at_m: ice_m * 0.65 },
			{ who: 'for vehicles', at_m: ice_m * 0.6 }
		]
	});
	const { labels, height } = columnDrawing(input);
	const places = labels.map(({ textY }) => textY).toSorted((a, b) => a - b);
	places.slice(1).forEach((place, index) => {
		expect(place - (places[index] ?? 0)).toBeGreaterThan(18.9);
	});
	expect(Math.min(...places)).toBeGreaterThanOrEqual(13.9);
	expect(Math.max(...places)).toBeLessThanOrEqual(height);
});

test('ticks of the ruler are round numbers in the unit of the reader', () => {
	const ticks = rulerTicks(0.4572, { measure: 'imperial', mass: 'lb' });
	expect(ticks.filter(({ text }) => text !== null).map(({ text }) => text)).toEqual([
		'0',
		'4',
		'8',
		'12',
		'16'
	]);
	expect(ticks[2]?.at_m).toBeCloseTo(4 * 0.0254, 9);
	expect(rulerTicks(1.6, METRIC).at(-1)?.at_m).toBeCloseTo(1.6, 9);
});

test('what a mark is called ends within the drawing', () => {
	const marks = ['“Great wheeled shelter”', '“Green tractor of the cove”', 'snowmobile'];
	const loads = marks.map((mark) => ({ mark, required_m: 0.4 }));
	const { labels } = columnDrawing(column({ loads }));
	const named = labels.filter(({ kind }) => kind === 'mark').map(({ text }) => text);
	expect(named).toEqual(['40 cm “Great w… and 2 more']);
	// Beside the ruler are 183 units, and a letter of the page's type is 6.9 wide at most.
	for (const text of named) expect(6.9 * text.length).toBeLessThan(183);
});
