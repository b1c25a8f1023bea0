import { expect, test } from 'vitest';
import { thinnerSince } from '#lib/model/leaving/thinner-since.ts';
import { outlook } from '#lib/model/outlook.ts';
import { since } from '../../support/invented-since.ts';
import { asked, reading } from '../../support/invented-winter.ts';

const frost = Array.from({ length: 60 }, () => -12);
const LATER = '2027-01-31';
const textWith = (seen: Parameters<typeof since>[1]) =>
	outlook(asked(frost, { members: 60, since: since(LATER, seen) }))?.forecast.leaving;

test('beside a thin hole drilled since, nothing is said to be lost only for the days before it', () => {
	const leaving = textWith({ readings: [reading(LATER, [0.3, 0.12])] });
	expect(leaving?.thinnerSince).toEqual({ on: LATER, total_m: 0.12 });
	expect(leaving?.texts.lost).toBe(
		'A hole of 31 Jan shows 12 cm, less than the estimate: what has gone is not known before the weather of that day is in. To 29 Jan: no ice has been lost to the weather so far.'
	);
});

test('a site that has opened since is said to be open first', () => {
	const leaving = textWith({ events: [{ kind: 'reopened', on: LATER, refrozeOn: null }] });
	expect(leaving?.texts.lost).toMatch(/^On 31 Jan it was open: /);
});

test('a hole as thick as the estimate, one that did not go through and broken ice say nothing of loss', () => {
	const seen = (change: Parameters<typeof reading>[2], total_m: number) =>
		thinnerSince({ readings: [reading(LATER, [total_m], change)], events: [] }, 0.4);
	expect(seen({}, 0.41)).toBeNull();
	expect(seen({}, 0.395)).toBeNull();
	expect(seen({}, 0.39)).toEqual({ on: LATER, total_m: 0.39 });
	expect(seen({ kind: 'atLeast' }, 0.1)).toBeNull();
	expect(seen({ kind: 'wentThrough' }, 0.1)).toBeNull();
	expect(thinnerSince(null, 0.4)).toBeNull();
});
