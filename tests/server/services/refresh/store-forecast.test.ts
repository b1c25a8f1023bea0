import { expect, test } from 'vitest';
import { knownForecast } from '../../../../src/lib/server/services/known-forecast.ts';
import { storeForecast } from '../../../../src/lib/server/services/refresh/store-forecast.ts';
import { readTrust } from '../../../../src/lib/server/services/trust.ts';
import type { SourceAnswer } from '../../../../src/lib/server/weather/source/contract.ts';
import { storeIssue } from '../../../../src/lib/server/storage/forecasts.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	askingOf,
	contextWithService,
	hoursFrom,
	useSource
} from '../../../support/invented-source.ts';
import { weatherDay } from '../../../support/weather-day.ts';

/** A lake on UTC that uses one source, at noon. */
async function lake() {
	const { ctx, setNow } = await contextWithService('2027-01-20T12:00:00Z');
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	const store = async (changes: Partial<SourceAnswer>) =>
		storeForecast(ctx, await askingOf(ctx), answered({ issuedAt: ctx.now(), ...changes }));
	const known = async () =>
		knownForecast(ctx, await readTrust(ctx, id), { lastOn: '2027-01-19', by: ctx.now() });
	const airs = async () =>
		Object.fromEntries((await known()).days.map(({ on, air_degC }) => [on, air_degC]));
	return { ctx, setNow, store, known, airs };
}

/** So many hours of one temperature from noon of the twentieth on. */
const from = (hour: string, count: number, air_degC: number | null) =>
	hoursFrom(
		`2027-01-${hour}:00:00Z`,
		Array.from({ length: count }, () => air_degC)
	);

test('hours that a new issue leaves open are not filled from the one before', async () => {
	const { store, airs, setNow } = await lake();
	await store({ hours: from('20T12', 84, -20) });
	setNow('2027-01-20T18:00:00Z');
	const hours = [...from('20T18', 30, -4), ...from('22T00', 24, null), ...from('23T00', 24, -4)];
	await store({ hours });
	const told = await airs();
	expect(told['2027-01-21']).toBe(-4);
	expect(told).not.toHaveProperty('2027-01-22');
	expect(told['2027-01-23']).toBe(-4);
});

test('hours that a new issue does not reach are gone with the one before', async () => {
	const { store, airs, setNow } = await lake();
	await store({ hours: from('20T12', 84, -20) });
	setNow('2027-01-20T18:00:00Z');
	await store({ hours: [...from('20T18', 6, -4), ...from('21T20', 28, -4)] });
	const told = await airs();
	expect(told).not.toHaveProperty('2027-01-21');
	expect(told['2027-01-22']).toBe(-4);
});

test('hours of today that have ended stand as they were last forecast', async () => {
	const { store, airs, setNow } = await lake();
	setNow('2027-01-20T00:00:00Z');
	await store({ hours: from('20T00', 48, -20) });
	setNow('2027-01-20T12:00:00Z');
	await store({ hours: from('20T12', 36, -10) });
	expect((await airs())['2027-01-20']).toBe(-15);
});

/** Temperatures that no two forecasts have alike. */
const wave = (hour: string, count: number, shift = 0) =>
	from(hour, count, 0).map((each, at) => ({ ...each, air_degC: -8 + Math.sin(at + shift) }));

const untold = { isIssueTold: false };

test('a forecast that does not say when it was made is as old as when it first came', async () => {
	const { store, known, setNow, ctx } = await lake();
	const hours = wave('20T12', 96);
	await store({ hours, ...untold });
	setNow('2027-01-20T18:00:00Z');
	await store({ hours: hours.slice(6), issuedAt: ctx.now(), ...untold });
	expect((await known()).issuedAt).toEqual(new Date('2027-01-20T12:00:00Z'));
	setNow('2027-01-21T13:00:00Z');
	await store({ hours: hours.slice(25), issuedAt: ctx.now(), ...untold });
	expect(await known()).toMatchObject({ isOld: true, issuedOn: null });
	setNow('2027-01-21T14:00:00Z');
	await store({ hours: wave('21T14', 60, 1), issuedAt: ctx.now(), ...untold });
	expect(await known()).toMatchObject({ isOld: false, issuedAt: ctx.now() });
});

test('days that come again unchanged are as old as when they first came', async () => {
	const { store, known, setNow, ctx } = await lake();
	const days = ['21', '22', '23'].map((day, at) => {
		const { source: _, ...values } = weatherDay(`2027-01-${day}`, { air_degC: -5 - at });
		return values;
	});
	await store({ days, ...untold });
	setNow('2027-01-20T20:00:00Z');
	await store({ days, issuedAt: ctx.now(), ...untold });
	expect((await known()).issuedAt).toEqual(new Date('2027-01-20T12:00:00Z'));
	const [first, ...rest] = days;
	await store({ days: first ? [{ ...first, air_degC: -4 }, ...rest] : [], ...untold });
	expect((await known()).issuedAt).toEqual(ctx.now());
});

test('the same forecast again is no newer for saying that it is', async () => {
	const { store, known, setNow, ctx } = await lake();
	const hours = wave('20T12', 96);
	await store({ hours });
	setNow('2027-01-21T13:00:00Z');
	await store({ hours: hours.slice(25), issuedAt: ctx.now() });
	expect(await known()).toMatchObject({ isOld: true, issuedOn: null });
	await store({ hours: wave('21T13', 60, 1), issuedAt: ctx.now() });
	expect(await known()).toMatchObject({ isOld: false, issuedAt: ctx.now() });
});

test('nothing is stored as made later than now', async () => {
	const { store, known, setNow } = await lake();
	const issuedAt = new Date('2027-01-21T12:00:00Z');
	await store({ hours: wave('20T12', 72), issuedAt });
	expect((await known()).issuedAt).toEqual(new Date('2027-01-20T12:00:00Z'));
	setNow('2027-01-21T12:30:00Z');
	expect((await known()).isOld).toBe(true);
});

test('an issue of the future that an older release has stored is let go', async () => {
	const { ctx, store, known, setNow } = await lake();
	const issuedAt = new Date('2027-01-21T12:00:00Z');
	const issue = { lakeSourceId: 1, issuedAt, correction_K: 0, place_m: null, days: [] };
	await ctx.db.transaction().execute((tx) => storeIssue(tx, issue));
	await store({ hours: wave('20T12', 72) });
	setNow('2027-01-21T12:30:00Z');
	expect((await known()).isOld).toBe(true);
});
