import { expect, test } from 'vitest';
import { FormInput } from '#lib/ui/forms/form-input.ts';
import { addPointRow, pointRows, readRoute, routeValues } from '#lib/ui/forms/route-form.ts';
import { plain, route, spotPoint } from '../../support/invented-route.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

const TYPED = {
	name: 'Out',
	startsAtShore: 'yes',
	'points.0.order': '1',
	'points.0.spot': 'plain',
	'points.0.name': 'Landing',
	'points.0.latitude': '47.4, -38.2',
	'points.0.longitude': '',
	'points.1.order': '2',
	'points.1.spot': 'w-1',
	'points.1.leg_ft': '100',
	'points.2.order': '3',
	'points.2.spot': '',
	'points.2.name': ''
};

function read(changes: Record<string, string> = {}) {
	const input = new FormInput({ ...TYPED, ...changes });
	return { route: readRoute(input), fields: input.issues.map(({ field }) => field) };
}

test('rows become points; empty ones are left out, a pasted pair is taken apart', () => {
	const { route, fields } = read();
	expect(fields).toEqual([]);
	expect(route).toMatchObject({ name: 'Out', startsAtShore: true, endsAtShore: false });
	expect(route.points).toEqual([
		{ name: 'Landing', latitude: 47.4, longitude: -38.2, leg_m: null, site: 'main' },
		// 100 international feet.
		{ spot: 'w-1', leg_m: 30.48 }
	]);
});

test('the numbers give the order, halves in between', () => {
	const { route } = read({
		'points.2.order': '1.5',
		'points.2.name': 'Reef',
		'points.0.order': '9'
	});
	expect(route.points.map((point) => ('name' in point ? point.name : point.spot))).toEqual([
		'Reef',
		'w-1',
		'Landing'
	]);
});

test.each([
	['no name', { name: '' }, 'name'],
	['one point', { 'points.1.spot': '', 'points.1.leg_ft': '' }, 'points.1.spot'],
	['a plain point without a name', { 'points.0.name': '' }, 'points.0.name'],
	['a weak spot with a name of its own', { 'points.1.name': 'X' }, 'points.1.name'],
	['an order that is a word', { 'points.1.order': 'last' }, 'points.1.order'],
	['half a position', { 'points.0.latitude': '47.4' }, 'points.0.longitude'],
	[
		'a latitude past the pole',
		{ 'points.0.latitude': '95', 'points.0.longitude': '1' },
		'points.0.latitude'
	]
])('%s is refused at its field', (_, changes, field) => {
	expect(read(changes).fields).toContain(field);
});

test('a stored route shown and sent again is the same', () => {
	const stored = route([
		{ ...plain('A', null), position: { latitude: 47.123456789, longitude: -38.2 } },
		spotPoint('rocks', 12.3456)
	]);
	const input = new FormInput(routeValues(stored, METRIC));
	expect(readRoute(input, stored).points).toEqual([
		{ name: 'A', latitude: 47.123456789, longitude: -38.2, leg_m: null, site: 'main' },
		{ spot: 'w-rocks', leg_m: 12.3456 }
	]);
});

test('a row more is asked for without script', () => {
	expect(pointRows({})).toBe(3);
	expect(pointRows(addPointRow(TYPED).values)).toBe(4);
});
