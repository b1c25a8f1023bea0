import { expect, test } from 'vitest';
import { hindsightDrawing } from '#lib/ui/charts/hindsight-drawing.ts';
import { inventedHindcast, predictedReading } from '../../support/invented-hindcast.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

test('columns stand apart, in order, within the picture', () => {
	const { columns } = hindsightDrawing(inventedHindcast(), METRIC);
	expect(columns).toHaveLength(10);
	columns.forEach(({ x, width }, index) => {
		const next = columns[index + 1];
		if (next) expect(x + width / 2).toBeLessThan(next.x - next.width / 2);
		else expect(x + width / 2).toBeLessThan(100);
	});
});

test('the band holds the estimate, and the hole where it was inside', () => {
	const { columns, foot, height } = hindsightDrawing(inventedHindcast(), METRIC);
	for (const { band, estimateY, measuredY, isOutside } of columns) {
		const [top, bottom] = [band?.y ?? 0, (band?.y ?? 0) + (band?.height ?? 0)];
		expect(estimateY).toBeGreaterThan(top);
		expect(estimateY).toBeLessThan(bottom);
		expect(measuredY > top && measuredY < bottom).toBe(!isOutside);
		expect(top).toBeGreaterThanOrEqual(0);
		expect(bottom).toBeLessThanOrEqual(foot);
	}
	expect(foot).toBeLessThan(height);
	expect(columns.filter(({ isOutside }) => isOutside)).toHaveLength(1);
});

test('not more days are named than a phone has room for', () => {
	const named = hindsightDrawing(inventedHindcast(), METRIC).columns.flatMap(
		({ text }) => text ?? []
	);
	expect(named).toEqual(['10 Dec', '7 Jan', '4 Feb', '4 Mar', '1 Apr']);
});

test('a reading without a prediction is a hole alone, and nothing is not a number', () => {
	const unknown = { p05: null, p10: null, p50: null, p90: null, p95: null };
	const drawing = hindsightDrawing(
		[predictedReading({ predicted: unknown, measured_m: 0 })],
		METRIC
	);
	expect(drawing.columns[0]).toMatchObject({ band: null, estimateY: null, isOutside: false });
	expect(JSON.stringify([drawing, hindsightDrawing([], METRIC)])).not.toMatch(/NaN|"y":null/);
});
