import { expect, test } from 'vitest';
import { RULES } from '../../../src/routes/access/may.ts';
import { allCalls, doubleRoutes } from '../../support/calls.ts';

test('every route, method and form action is in the table of who may do what, and nothing else', () => {
	const listed = Object.entries(RULES).flatMap(([route, rules]) =>
		Object.keys(rules).map((call) => `${call} ${route}`)
	);
	// The fallback that answers unknown addresses of the API takes every method.
	const answered = [...allCalls(), 'GET /api/[...rest]'].toSorted();
	expect(listed.toSorted()).toEqual(answered);
});

test('no address is both a page and an endpoint', () => {
	expect(doubleRoutes()).toEqual([]);
});
