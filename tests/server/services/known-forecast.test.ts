import { expect, test } from 'vitest';
import { addDays, type IsoDate } from '../../../src/lib/model/calendar.ts';
import type { Context } from '../../../src/lib/server/context.ts';
import { knownForecast } from '../../../src/lib/server/services/known-forecast.ts';
import { issuedForecasts } from '../../../src/lib/server/services/issued-forecasts.ts';
import { createSource } from '../../../src/lib/server/services/sources/sources.ts';
import { newSource } from '../../../src/lib/server/services/sources/input.ts';
import { readTrust } from '../../../src/lib/server/services/trust.ts';
import { storeIssue } from '../../../src/lib/server/storage/forecasts.ts';
import { updateLakeSourceRow } from '../../../src/lib/server/storage/lake-sources.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inventedSource, orderOf, useSource } from '../../support/invented-source.ts';
import { weatherDay } from '../../support/weather-day.ts';

/** A lake on UTC at 120 m that uses one source, of use number 1. */
async function lakeWithSource() {
	const ctx = await freshContext('2027-01-20T12:00:00Z');
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC', elevation_m: 120 });
	await useSource(ctx, id);
	return { ctx, id };
}

/** A forecast of one temperature for so many days from its own day on. */
async function issue(ctx: Context, issuedAt: string, air_degC: number | null, days = 5, use = 1) {
	const from = issuedAt.slice(0, 10);
	const issued = {
		lakeSourceId: use,
		issuedAt: new Date(issuedAt),
		correction_K: 0,
		place_m: null,
		days: Array.from({ length: days }, (_, index) => {
			const { source: _source, ...day } = weatherDay(addDays(from, index), { air_degC });
			return day;
		})
	};
	await ctx.db.transaction().execute((tx) => storeIssue(tx, issued));
}

async function known(
	ctx: Context,
	id: string,
	by = '2027-01-20T12:00:00Z',
	lastOn: IsoDate | null = '2027-01-19'
) {
	return knownForecast(ctx, await readTrust(ctx, id), { lastOn, by: new Date(by) });
}

const airs = (days: readonly { on: IsoDate; air_degC: number | null }[]) =>
	days.map(({ on, air_degC }) => [on, air_degC]);

test('the newest issue alone tells the days to come, from the day after the last observed', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-20T00:00:00Z', -12, 8);
	await issue(ctx, '2027-01-20T06:00:00Z', -5, 3);
	const forecast = await known(ctx, id);
	expect(airs(forecast.days)).toEqual([
		['2027-01-20', -5],
		['2027-01-21', -5],
		['2027-01-22', -5]
	]);
	expect(forecast.days.every(({ source }) => source === 'forecast')).toBe(true);
	expect(forecast).toMatchObject({
		issuedOn: '2027-01-20',
		issuedAt: new Date('2027-01-20T06:00:00Z'),
		isOld: false
	});
});

test('after 24 hours a forecast tells no day to come, and says that it is old', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-19T12:00:00Z', -5);
	expect((await known(ctx, id)).days.map(({ on }) => on)).toEqual([
		'2027-01-20',
		'2027-01-21',
		'2027-01-22',
		'2027-01-23'
	]);
	const old = await known(ctx, id, '2027-01-20T12:00:01Z');
	expect(old).toMatchObject({ days: [], issuedOn: null, isOld: true });
	expect(old.issuedAt).toEqual(new Date('2027-01-19T12:00:00Z'));
});

test('a day that passed unobserved keeps the last forecast made for it, however old', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-17T06:00:00Z', -1);
	await issue(ctx, '2027-01-17T18:00:00Z', -2);
	await issue(ctx, '2027-01-18T06:00:00Z', -3);
	const { days, issuedOn } = await known(ctx, id, undefined, '2027-01-16');
	expect(airs(days)).toEqual([
		['2027-01-17', -2],
		['2027-01-18', -3],
		['2027-01-19', -3]
	]);
	expect(issuedOn).toBeNull();
});

test('a day that only a forecast of long before told stays a gap', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-10T06:00:00Z', -1, 10);
	expect((await known(ctx, id, undefined, '2027-01-09')).days.map(({ on }) => on)).toEqual([
		'2027-01-10',
		'2027-01-11'
	]);
});

test('only what was issued by then is known of a past day', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-18T06:00:00Z', -3);
	await issue(ctx, '2027-01-19T06:00:00Z', -9);
	const then = await known(ctx, id, '2027-01-18T23:59:59Z', '2027-01-17');
	expect(airs(then.days)[0]).toEqual(['2027-01-18', -3]);
	expect(then.issuedAt).toEqual(new Date('2027-01-18T06:00:00Z'));
	expect(await known(ctx, id, '2027-01-17T23:59:59Z')).toMatchObject({ days: [], issuedAt: null });
});

test('of two sources the more trusted stands, and the other goes on where it ends', async () => {
	const { ctx, id } = await lakeWithSource();
	const second = inventedSource({ id: 'second-weather' });
	await createSource(ctx, newSource.parse({ source: second }));
	await orderOf(ctx, id, ['csv', 'second-weather', 'invented-weather']);
	await issue(ctx, '2027-01-20T06:00:00Z', -5, 4, 1);
	await issue(ctx, '2027-01-20T07:00:00Z', -7, 2, 2);
	expect(airs((await known(ctx, id)).days)).toEqual([
		['2027-01-20', -7],
		['2027-01-21', -7],
		['2027-01-22', -5],
		['2027-01-23', -5]
	]);
	await orderOf(ctx, id, ['csv', 'invented-weather', 'second-weather']);
	expect(airs((await known(ctx, id)).days).map(([, air]) => air)).toEqual([-5, -5, -5, -5]);
});

test('a source that has gone stale gives way to a fresh one, however trusted', async () => {
	const { ctx, id } = await lakeWithSource();
	const second = inventedSource({ id: 'second-weather' });
	await createSource(ctx, newSource.parse({ source: second }));
	await orderOf(ctx, id, ['csv', 'second-weather', 'invented-weather']);
	await issue(ctx, '2027-01-18T06:00:00Z', -20, 9, 2);
	await issue(ctx, '2027-01-20T06:00:00Z', -5, 2, 1);
	const forecast = await known(ctx, id);
	expect(airs(forecast.days)).toEqual([
		['2027-01-20', -5],
		['2027-01-21', -5]
	]);
	expect(forecast.isOld).toBe(false);
	expect(forecast.issuedAt).toEqual(new Date('2027-01-20T06:00:00Z'));
});

test('the elevation’s correction reaches forecasts that were issued before it was switched', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-20T06:00:00Z', -5, 1);
	await updateLakeSourceRow(ctx.db, 1, { station_elevation_m: 520 });
	expect((await known(ctx, id)).days[0]?.air_degC).toBeCloseTo(-2.4, 10);
	await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: false });
	expect((await known(ctx, id)).days[0]?.air_degC).toBe(-5);
});

test('a day without a temperature is not told', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-20T06:00:00Z', null);
	expect((await known(ctx, id)).days).toEqual([]);
});

test('every issue is kept with the days it told, for holding it against what came', async () => {
	const { ctx, id } = await lakeWithSource();
	await issue(ctx, '2027-01-18T06:00:00Z', -3, 3);
	await issue(ctx, '2027-01-19T06:00:00Z', -9, 2);
	const all = await issuedForecasts(ctx, id, '2027-01-20', '2027-01-20');
	expect(all).toEqual([
		{
			source: 'invented-weather',
			issuedAt: new Date('2027-01-19T06:00:00Z'),
			on: '2027-01-20',
			lead_d: 1,
			air_degC: -9,
			precipitation_kg_m2: null
		},
		expect.objectContaining({ lead_d: 2, air_degC: -3 })
	]);
});
