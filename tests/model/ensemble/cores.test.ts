import { expect, test } from 'vitest';
import { takeCores } from '#lib/model/ensemble/cores.ts';
import { openMembers } from '#lib/model/ensemble/members.ts';
import type { Reading } from '#lib/model/reading.ts';
import { ROTTEN } from '#lib/model/rotten.ts';
import {
	coldWinter,
	dayAt,
	ensembleInput,
	follow,
	median
} from '../../support/invented-ensemble.ts';
import { reading } from '../../support/invented-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const ON = '2027-03-10';
const core = (core: Reading['core'], change: Partial<Reading> = {}) =>
	reading(ON, [0.4], { core, ...change });

/** What members with 2, 8 and 40 % of water, and an open one, hold after a day's cores. */
function after(...today: Reading[]): number[] {
	const members = openMembers(4);
	members.clear_m.set([0.4, 0.3, 0.2, 0]);
	members.liquidFraction.set([0.02, 0.08, 0.4]);
	takeCores(members, today);
	expect(members.liquidFraction[3]).toBe(0);
	return Array.from(members.liquidFraction).slice(0, 3);
}

test('a wet core raises members to a tenth of water, a candled one to three tenths', () => {
	expect(after(core('wet'))).toEqual([0.1, 0.1, 0.4]);
	expect(after(core('candled'))).toEqual([0.3, 0.3, 0.4]);
});

test('a sound core takes rotten members back to where rot begins, and dries no other', () => {
	expect(after(core('sound'))).toEqual([0.02, ROTTEN, ROTTEN]);
});

test('of several cores of a day the worst counts, in whatever order', () => {
	expect(after(core('sound'), core('candled'))).toEqual([0.3, 0.3, 0.4]);
	expect(after(core('candled'), core('wet'), core('sound'))).toEqual([0.3, 0.3, 0.4]);
});

test('a bad core counts from hearsay, a sound one does not; of ice that broke neither', () => {
	const told = { secondHand: true };
	expect(after(core('wet', told))).toEqual([0.1, 0.1, 0.4]);
	expect(after(core('sound', told))).toEqual([0.02, 0.08, 0.4]);
	expect(after(core('candled', { kind: 'wentThrough' }))).toEqual([0.02, 0.08, 0.4]);
	expect(after(core(null))).toEqual([0.02, 0.08, 0.4]);
});

/** Sixty days of frost, a core of the same thickness on the last of them, and three weeks of thaw. */
function thickness_m(of: Reading['core']): number[] {
	const thaw = Array.from({ length: 21 }, (_, day) => weatherDay(dayAt(61 + day), { air_degC: 4 }));
	const read = reading(dayAt(60), [0.4], { core: of });
	return follow(
		ensembleInput({ weather: [...coldWinter(60), ...thaw], until: dayAt(81), readings: [read] })
	).map(({ site_m }) => median(site_m));
}

test('ice that was candled goes sooner in the thaw, and no core leaves it thicker than none', () => {
	const [none, wet, candled] = [thickness_m(null), thickness_m('wet'), thickness_m('candled')];
	for (const day of [65, 70, 75]) {
		expect(candled[day]).toBeLessThan((none[day] ?? NaN) - 0.005);
		expect(wet[day]).toBeLessThanOrEqual((none[day] ?? NaN) + 1e-9);
		expect(candled[day]).toBeLessThanOrEqual((wet[day] ?? NaN) + 1e-9);
	}
});
