import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { ForecastLoad } from '#lib/model/forecast.ts';
import type { Route } from '#lib/model/places/route.ts';
import { routeAnswer, type RouteInput } from '#lib/model/places/route-answer.ts';
import type { Reading } from '#lib/model/reading.ts';
import { plain, route, spotPoint } from '../../support/invented-route.ts';
import { LOADS, MINIMUMS } from '../../support/invented-winter.ts';
import {
	hole,
	inventedForecast,
	inventedLoad,
	inventedReading,
	inventedView
} from '../../support/invented-view.ts';

const TODAY = '2027-02-10';
const CAR = LOADS.filter(({ id }) => id === 'car');

/** A frosty winter whose lower bound for vehicles is 30 cm. */
function frosty(changes: Partial<ForecastLoad> = {}) {
	const loads = LOADS.map(({ id, mass_kg }) =>
		inventedLoad({ id, mass_kg, bound_m: 0.3, rules: [], ...changes })
	);
	const { days, ...forecast } = inventedForecast({ loads });
	return { ...forecast, days: days.map((day) => ({ ...day, tdd_degCd: 0 })) };
}

function asked(points: Route['points'], changes: Partial<RouteInput> = {}) {
	return routeAnswer({
		route: route(points),
		lake: inventedView().lake,
		forecasts: new Map([['main', frosty()]]),
		today: TODAY,
		readings: [],
		loads: LOADS,
		minimums: MINIMUMS,
		chartSet: 'strict',
		...changes
	});
}

const loadOf = (answer: ReturnType<typeof asked>, id: string) =>
	answer.loads.find((load) => load.id === id);
const statusOf = (answer: ReturnType<typeof asked>, id: string) => loadOf(answer, id)?.status;

const drilled = (place: string, on: string, ...clear_m: number[]): Reading =>
	inventedReading({
		id: `${place}-${on}`,
		place,
		on,
		holes: clear_m.map((each_m) => hole({ clear_m: each_m, white_m: 0 }))
	});

test('plain points have the bound for vehicles, on foot too', () => {
	const answer = asked([plain('Shore'), plain('Bay')]);
	expect(answer.points.map(({ effective_m, by }) => [effective_m, by])).toEqual([
		[0.3, 'bound'],
		[0.3, 'bound']
	]);
	expect(answer.unknown).toEqual([]);
	expect(statusOf(answer, 'on-foot')).toBe('expectedNotDrilled');
	expect(statusOf(answer, 'car')).toBe('notYet');
});

test('a load’s mass is told with its trailer, whether a site answers for it or not', () => {
	const towing = CAR.map((load) => ({ ...load, trailer: { mass_kg: 700, apart_m: null } }));
	const told = new Map([['main', frosty({ counted_kg: 2500 })]]);
	const kg = (changes: Partial<RouteInput>) =>
		loadOf(asked([plain('Shore'), plain('Bay')], { loads: towing, ...changes }), 'car')?.counted_kg;
	expect(kg({ forecasts: told })).toBe(2500);
	expect(kg({ forecasts: new Map() })).toBe((CAR[0]?.mass_kg ?? 0) + 700);
});

test('a weak spot without holes makes the whole route one of which nothing is known', () => {
	const answer = asked([plain('Shore'), spotPoint('narrows'), plain('Bay')]);
	expect(answer.unknown).toEqual([1]);
	expect(statusOf(answer, 'on-foot')).toBe('notKnown');
});

test('the weakest point decides, never the average', () => {
	const points = [plain('Shore'), spotPoint('bogOrWeeds'), plain('Bay')];
	const readings = [drilled('The bogOrWeeds', TODAY, 0.9, 0.9, 0.12)];
	const answer = asked(points, { readings });
	expect(answer.weakest).toBe(1);
	expect(loadOf(answer, 'on-foot')).toMatchObject({
		status: 'notYet',
		weakest: 1,
		required_m: 0.15,
		effective_m: 0.12
	});
});

test('moving water asks 15 % more there, a crack twice the load', () => {
	const readings = [drilled('The current', TODAY, 0.45), drilled('The crack', TODAY, 0.45)];
	const over = (kind: 'current' | 'crack') =>
		asked([plain('Shore'), spotPoint(kind)], {
			readings,
			loads: CAR,
			forecasts: new Map([['main', frosty({ bound_m: 0.6 })]])
		}).loads[0];
	// Strict chart for a car 40 cm; 40 · 1.15 = 46 cm over a current.
	expect(over('current')).toMatchObject({ weakest: 1, status: 'notYet' });
	expect(over('current')?.required_m).toBeCloseTo(0.46, 9);
	// √(2 · 1800 kg / 3.5 kg/cm²) = 32 cm, below the chart's 40 cm, which stays.
	expect(over('crack')).toMatchObject({ required_m: 0.4, status: 'expectedNotDrilled' });
});

test.each([
	['withheld', 'withheld'],
	['notYet', 'notYet'],
	['expectedNotDrilled', 'expectedNotDrilled'],
	['askAnEngineer', 'askAnEngineer']
] as const)('no route stands better than its site: %s', (status, expected) => {
	const readings = [drilled('Shore', TODAY, 0.5, 0.5), drilled('Bay', TODAY, 0.5, 0.5)];
	const forecasts = new Map([['main', frosty({ status })]]);
	const answer = asked([plain('Shore'), plain('Bay')], { readings, forecasts });
	expect(statusOf(answer, 'on-foot')).toBe(expected);
});

test('reached asks for enough holes at the points of the route itself', () => {
	const points = [plain('Shore'), plain('Bay')];
	const withHoles = (...holes: number[]) =>
		loadOf(asked(points, { readings: [drilled('Bay', TODAY, ...holes)] }), 'on-foot');
	expect(withHoles(0.5, 0.5)).toMatchObject({
		status: 'expectedNotDrilled',
		holes: 2,
		holesAsked: 3
	});
	expect(withHoles(0.5, 0.5, 0.5)).toMatchObject({ status: 'reached', holes: 3 });
});

test('a thin hole at a plain point counts against it, a thick one does not lift it', () => {
	const points = [plain('Shore'), plain('Bay')];
	const bay = (thickness_m: number) =>
		asked(points, { readings: [drilled('Bay', TODAY, thickness_m)] }).points[1];
	expect(bay(0.1)).toMatchObject({ effective_m: 0.1, by: 'holes' });
	expect(bay(0.8)).toMatchObject({ effective_m: 0.3, by: 'bound' });
});

test.each([
	['no estimate', { forecasts: new Map([['main', null]]) }],
	['no answer for the site at all', { forecasts: new Map() }]
])('%s: nothing is known', (_, changes) => {
	const answer = asked([plain('Shore'), plain('Bay')], changes);
	expect(answer.unknown).toEqual([0, 1]);
	expect(answer.loads.every(({ status }) => status === 'notKnown')).toBe(true);
});

test('a weak spot that was taken off the list stays a gap in the route', () => {
	const gone = { ...spotPoint('spring'), isSpotDeleted: true };
	const readings = [drilled('The spring', TODAY, 0.9)];
	expect(asked([plain('Shore'), gone], { readings }).unknown).toEqual([1]);
});

test('where somebody broke through at a plain point nothing is known either', () => {
	const broke = inventedReading({
		id: 'b',
		place: 'Bay',
		on: TODAY,
		kind: 'wentThrough',
		holes: []
	});
	expect(asked([plain('Shore'), plain('Bay')], { readings: [broke] }).unknown).toEqual([1]);
});

test("a ridge's holes support nothing, though they be thick and of today", () => {
	const readings = [drilled('The pressureRidge', TODAY, 1, 1, 1)];
	expect(asked([plain('Shore'), spotPoint('pressureRidge')], { readings }).unknown).toEqual([1]);
});

test('more known ice never worsens a route, and one more weak point never betters it', () => {
	const ORDER = ['withheld', 'notYet', 'notKnown', 'expectedNotDrilled', 'reached'];
	const rank = (points: Route['points'], readings: Reading[]) =>
		ORDER.indexOf(statusOf(asked(points, { readings }), 'on-foot') ?? '');
	const points = [plain('Shore'), spotPoint('drift'), plain('Bay')];
	const at = (thickness_m: number) => [drilled('The drift', TODAY, ...Array(3).fill(thickness_m))];
	const ranks = [0.05, 0.14, 0.16, 0.5].map((each_m) => rank(points, at(each_m)));
	expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
	expect(ranks[0]).toBeLessThan(ranks.at(-1) ?? 0);
	const longer = [...points, spotPoint('current')];
	expect(rank(longer, at(0.5))).toBeLessThanOrEqual(rank(points, at(0.5)));
});

test('yesterday at a landing counts, the day before does not', () => {
	const points = [spotPoint('landing'), plain('Bay')];
	const since = (days: number) =>
		asked(points, { readings: [drilled('The landing', addDays(TODAY, -days), 0.5)] }).unknown;
	expect([since(1), since(2)]).toEqual([[], [0]]);
});
