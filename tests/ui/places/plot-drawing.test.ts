import { expect, test } from 'vitest';
import { plotDrawing, type PlotPlace } from '#lib/ui/places/plot-drawing.ts';
import type { Units } from '#lib/ui/units-setting.ts';

const METRIC: Units = { measure: 'metric', mass: 'kg' };
const FEET: Units = { measure: 'imperial', mass: 'lb' };

const at = (id: string, latitude: number, longitude: number): PlotPlace => ({
	id,
	number: id,
	name: `Place ${id}`,
	position: { latitude, longitude },
	state: 'unknown'
});

/** 0.009 degrees of latitude are 1000.8 m on a sphere of 6371 km. */
const SOUTH = at('1', 47, -38);
const NORTH = at('2', 47.009, -38);

test('north is up, and the bar is as long as it says', () => {
	const drawing = plotDrawing([SOUTH, NORTH], [], 320, METRIC);
	const [south, north] = drawing?.marks ?? [];
	expect(north?.y).toBeLessThan(south?.y ?? 0);
	expect(north?.x).toBe(south?.x);
	const px_per_m = ((south?.y ?? 0) - (north?.y ?? 0)) / 1000.75;
	const bar_m = Number.parseFloat(drawing?.bar.text ?? '');
	expect(drawing?.bar.text).toMatch(/ m$/);
	expect((drawing?.bar.width ?? 0) / bar_m).toBeCloseTo(px_per_m, 2);
	expect(plotDrawing([SOUTH, NORTH], [], 320, FEET)?.bar.text).toMatch(/ ft$/);
});

test('east is right, shrunk by the latitude', () => {
	const drawing = plotDrawing(
		[at('1', 60, 20), at('2', 60, 20.01), at('3', 60.005, 20)],
		[],
		320,
		METRIC
	);
	const [origin, east, north] = drawing?.marks ?? [];
	const dx = (east?.x ?? 0) - (origin?.x ?? 0);
	const dy = (origin?.y ?? 0) - (north?.y ?? 0);
	// cos 60° = ½: as far as half as many degrees of latitude.
	expect(dx).toBeCloseTo(dy, 0);
	expect(dx).toBeGreaterThan(0);
});

test('no place with a position is no drawing, and one alone is in the middle', () => {
	expect(plotDrawing([], [], 320, METRIC)).toBeNull();
	const alone = plotDrawing([SOUTH], [], 320, METRIC);
	expect(alone?.marks[0]?.x).toBe(160);
	expect(Number.isFinite(alone?.bar.width)).toBe(true);
});

test('a route without one of its positions is drawn in the stretches that are known', () => {
	const points = [SOUTH.position, NORTH.position, null, SOUTH.position];
	const drawing = plotDrawing([], [{ id: 'r', name: 'R', points }], 320, METRIC);
	expect(drawing?.lines).toHaveLength(1);
	expect(drawing?.lines[0]?.path).toMatch(/^M[\d.]+ [\d.]+L[\d.]+ [\d.]+$/);
});
