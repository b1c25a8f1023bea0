import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holePlan, LONGEST_m } from '#lib/model/places/hole-plan.ts';
import { isAtShore, isFlowing, WEAK_SPOT_KINDS } from '#lib/model/places/weak-spot.ts';
import { plain, route, spotPoint } from '../../support/invented-route.ts';

function holesOf(points: Parameters<typeof route>[0], isRiver = false, forVehicle = false) {
	const planned = holePlan(route(points), isRiver, forVehicle);
	if (planned.status !== 'planned') throw new Error(planned.status);
	return planned.plan.holes.map(({ at_m }) => Number(at_m.toFixed(3)));
}

// County of Barrhead: at most 30 m on lakes, 15 m on rivers; 10 m (30 ft) for the first 50 m.
test('from the shore every 10 m for 50 m, then every 30 m at most', () => {
	expect(holesOf([plain('Shore'), plain('Bay', 200)])).toEqual([
		0, 10, 20, 30, 40, 50, 80, 110, 140, 170, 200
	]);
});

test('on a river no more than 15 m apart', () => {
	expect(holesOf([plain('Shore'), plain('Bar', 110)], true)).toEqual([
		0, 10, 20, 30, 40, 50, 65, 80, 95, 110
	]);
});

test('near moving water no more than 15 m apart, and a hole at the weak spot itself', () => {
	const holes = holesOf([plain('Shore'), spotPoint('current', 150), plain('Far', 300)]);
	expect(holes).toContain(150);
	const near = holes.filter((at) => at >= 100 && at <= 200);
	const gaps = near.slice(1).map((at, index) => at - (near[index] ?? 0));
	expect(Math.max(...gaps)).toBeLessThanOrEqual(15);
});

test('three holes at least on foot, five for a vehicle, however short the way', () => {
	const short = [plain('Here'), plain('There', 8)];
	expect(holesOf(short)).toEqual([0, 4, 8]);
	expect(holesOf(short, false, true)).toEqual([0, 2, 4, 6, 8]);
});

test('a leg without positions or a length is asked for by its end', () => {
	const points = [plain('Shore'), plain('Nowhere', null), plain('End', 20)];
	expect(holePlan(route(points), false, false)).toEqual({ status: 'lengthNotKnown', to: [1] });
	expect(holePlan(route([plain('Alone')]), false, false).status).toBe('tooFewPoints');
	const far = [plain('Shore'), plain('Far', LONGEST_m + 1)];
	expect(holePlan(route(far), false, false).status).toBe('tooLong');
});

test('holes lie on the line between positions', () => {
	const from = { ...plain('Shore'), position: { latitude: 47, longitude: -38 } };
	const to = { ...plain('End'), position: { latitude: 47.0009, longitude: -38 } };
	const planned = holePlan(route([from, to]), false, false);
	if (planned.status !== 'planned') throw new Error(planned.status);
	// 0.0009 degrees of latitude on a sphere of 6371 km.
	expect(planned.plan.length_m).toBeCloseTo(100.075, 2);
	const positions = planned.plan.holes.map(({ position }) => position);
	expect(positions.every((position) => position?.longitude === -38)).toBe(true);
	expect(positions.at(-1)).toEqual(to.position);
	expect(positions[1]?.latitude).toBeCloseTo(47 + 10 / 111_194.93, 6);
});

const aLeg = fc.record({
	leg_m: fc.integer({ min: 0, max: 900 }),
	kind: fc.option(fc.constantFrom(...WEAK_SPOT_KINDS))
});

test('nowhere are holes farther apart than the place allows, and none lies off the route', () => {
	fc.assert(
		fc.property(
			fc.array(aLeg, { minLength: 1, maxLength: 6 }),
			fc.boolean(),
			fc.boolean(),
			(legs, isRiver, forVehicle) => {
				const points = [
					plain('Start'),
					...legs.map(({ leg_m, kind }, index) =>
						kind === null ? plain(`P${index}`, leg_m) : spotPoint(kind, leg_m)
					)
				];
				const end_m = legs.reduce((sum, { leg_m }) => sum + leg_m, 0);
				const holes = holesOf(points, isRiver, forVehicle);
				expect(holes[0]).toBe(0);
				expect(holes.at(-1)).toBe(end_m);
				if (end_m > 0) expect(holes.length).toBeGreaterThanOrEqual(forVehicle ? 5 : 3);
				let at_m = 0;
				const marks = legs.map(({ leg_m, kind }) => ({ at_m: (at_m += leg_m), kind }));
				holes.slice(1).forEach((to, index) => {
					const from = holes[index] ?? 0;
					const middle = (from + to) / 2;
					const isNear = (mark: { at_m: number }) => Math.abs(mark.at_m - middle) < 49.9;
					const nearShore =
						middle < 49.9 ||
						marks.some((mark) => mark.kind && isAtShore(mark.kind) && isNear(mark));
					const nearFlow =
						isRiver || marks.some((mark) => mark.kind && isFlowing(mark.kind) && isNear(mark));
					const most = nearShore ? 10 : nearFlow ? 15 : 30;
					expect(to - from).toBeLessThanOrEqual(most + 0.01);
				});
				for (const mark of marks) expect(holes).toContain(mark.at_m);
			}
		)
	);
});
