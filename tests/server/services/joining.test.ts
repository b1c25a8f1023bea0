import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { wordsFor } from '../../../src/lib/model/words.ts';
import type { Context } from '../../../src/lib/server/context.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { updateLake } from '../../../src/lib/server/services/lakes.ts';
import { storeHistory } from '../../../src/lib/server/services/refresh/store-history.ts';
import { joinChanged, joinedMeanwhile } from '../../../src/lib/server/services/joining.ts';
import { deleteSource, restoreSource } from '../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../src/lib/server/services/weather-csv.ts';
import { updateLakeSourceRow } from '../../../src/lib/server/storage/lake-sources.ts';
import { markForJoining } from '../../../src/lib/server/storage/joined-days.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { askingOf, hoursFrom, orderOf, useSource } from '../../support/invented-source.ts';
import { inPieces } from '../../support/winter-csv.ts';

const CSV = 'date,tmean_c,precip_mm\n2027-01-01,-4,2\n2027-01-02,-6,0\n';

/** A lake on UTC with two imported days, and a source of use number 1. */
async function lakeWithSource(facts: Record<string, unknown> = {}) {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC', ...facts });
	await importWeather(ctx, id, inPieces(CSV));
	await useSource(ctx, id);
	return { ctx, id };
}

/** Hours of the source, stored as a refresh stores them. */
async function bring(ctx: Context, id: string, from: string, air: readonly (number | null)[]) {
	const hours = hoursFrom(`${from}T00:00:00Z`, air, { precipitation_kg_m2: 0.25 });
	const to = '2027-01-31';
	await storeHistory(ctx.db, await askingOf(ctx), { hours, days: [] }, { from, to });
	await joinChanged(ctx, id);
}

/** About a temperature, so that no station is thought to stick. */
const about = (air_degC: number, count: number) =>
	Array.from({ length: count }, (_, index) => air_degC + (index % 2 === 0 ? -1 : 1));

const airs = async (ctx: Context, id: string) =>
	Object.fromEntries((await listWeather(ctx, id)).map((day) => [day.on, day.air_degC]));

test('what people imported stands before a source, which fills the days after it', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-01', about(-10, 72));
	expect(await airs(ctx, id)).toEqual({ '2027-01-01': -4, '2027-01-02': -6, '2027-01-03': -10 });
	const [first] = await listWeather(ctx, id);
	expect(first).toMatchObject({ source: 'observed', precipitation_kg_m2: 2 });
});

test('another order of trust joins the stored days anew, and back again', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-01', about(-10, 72));
	const before = await listWeather(ctx, id);
	await orderOf(ctx, id, ['invented-weather', 'csv']);
	const other = await listWeather(ctx, id);
	expect(other.map((day) => day.air_degC)).toEqual([-10, -10, -10]);
	expect(other[0]).toMatchObject({ precipitation_kg_m2: 6, freezing_degCd: 10 });
	await orderOf(ctx, id, ['csv', 'invented-weather']);
	expect(await listWeather(ctx, id)).toEqual(before);
});

test('a source that is no longer used takes its days along, and brings them back', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-03', about(-10, 24));
	await orderOf(ctx, id, []);
	expect(Object.keys(await airs(ctx, id))).toEqual(['2027-01-01', '2027-01-02']);
	await orderOf(ctx, id, ['csv', 'invented-weather']);
	expect((await airs(ctx, id))['2027-01-03']).toBe(-10);
});

test('deleting a source never deletes what a person imported', async () => {
	const { ctx, id } = await lakeWithSource();
	await orderOf(ctx, id, ['invented-weather', 'csv']);
	await bring(ctx, id, '2027-01-01', about(-10, 72));
	await deleteSource(ctx, 'invented-weather');
	expect(await airs(ctx, id)).toEqual({ '2027-01-01': -4, '2027-01-02': -6 });
	await restoreSource(ctx, 'invented-weather');
	expect(await airs(ctx, id)).toEqual({ '2027-01-01': -10, '2027-01-02': -10, '2027-01-03': -10 });
});

test('hours that a person imported are completed hour by hour', async () => {
	const { ctx, id } = await lakeWithSource();
	const rows = Array.from(
		{ length: 12 },
		(_, hour) => `2027-01-05T${String(hour).padStart(2, '0')}:00:00Z,-20`
	);
	await importWeather(ctx, id, inPieces(`time,temperature_c\n${rows.join('\n')}\n`));
	expect((await airs(ctx, id))['2027-01-05']).toBeNull();
	await bring(ctx, id, '2027-01-05', about(-10, 24));
	expect((await airs(ctx, id))['2027-01-05']).toBe(-15);
});

test('a station above the lake is corrected by 6.5 K a kilometre, which can be switched off', async () => {
	const { ctx, id } = await lakeWithSource({ elevation_m: 100 });
	await updateLakeSourceRow(ctx.db, 1, { station_elevation_m: 500 });
	await bring(ctx, id, '2027-01-03', about(-10, 24));
	expect((await airs(ctx, id))['2027-01-03']).toBeCloseTo(-10 + 2.6, 10);
	await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: false });
	expect((await airs(ctx, id))['2027-01-03']).toBe(-10);
	await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: true });
	await updateLake(ctx, id, { elevation_m: 300 });
	expect((await airs(ctx, id))['2027-01-03']).toBeCloseTo(-10 + 1.3, 10);
});

test('a station that sticks makes no days, and the next source stands in for it', async () => {
	const { ctx, id } = await lakeWithSource();
	const stuck = Array.from({ length: 30 }, () => -31.4);
	await bring(ctx, id, '2027-01-03', [...about(-10, 42), ...stuck]);
	expect(await airs(ctx, id)).toMatchObject({ '2027-01-03': -10, '2027-01-04': null });
	await importWeather(ctx, id, inPieces('date,tmean_c\n2027-01-04,-7\n'));
	await orderOf(ctx, id, ['invented-weather', 'csv']);
	expect((await airs(ctx, id))['2027-01-04']).toBe(-7);
});

test('sticking is seen across refreshes', async () => {
	const { ctx, id } = await lakeWithSource();
	const part = Array.from({ length: 13 }, () => -31.4);
	await bring(ctx, id, '2027-01-03', [...about(-10, 11), ...part]);
	expect((await airs(ctx, id))['2027-01-03']).toBeLessThan(-20);
	await bring(ctx, id, '2027-01-04', [...part, ...about(-10, 11)]);
	expect(await airs(ctx, id)).toMatchObject({ '2027-01-03': null, '2027-01-04': null });
});

test('a lake that is moved forgets what sources brought, and keeps what was imported', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-03', about(-10, 24));
	await updateLake(ctx, id, { latitude: 47.401 });
	expect((await airs(ctx, id))['2027-01-03']).toBe(-10);
	await updateLake(ctx, id, { latitude: 48.4 });
	expect(await airs(ctx, id)).toEqual({ '2027-01-01': -4, '2027-01-02': -6 });
});

test('another time zone cuts the hours of a source into other days', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-04', [...about(-10, 24), ...about(-2, 24)]);
	await updateLake(ctx, id, { timeZone: 'Etc/GMT-12' });
	expect((await airs(ctx, id))['2027-01-05']).toBe(-6);
});

test('a joining that was cut short is made up for by whoever reads next', async () => {
	const { ctx, id } = await lakeWithSource();
	await sql`DELETE FROM joined_day`.execute(ctx.db);
	await markForJoining(ctx.db, id, '2027-01-01', '2027-01-02');
	expect(await airs(ctx, id)).toEqual({ '2027-01-01': -4, '2027-01-02': -6 });
	const { rows } = await sql`SELECT * FROM rejoin`.execute(ctx.db);
	expect(rows).toEqual([]);
});

test('many changes at once end with all of them joined', async () => {
	const { ctx, id } = await lakeWithSource();
	await Promise.all(
		['03', '04', '05', '06', '07'].map((day) => bring(ctx, id, `2027-01-${day}`, about(-10, 24)))
	);
	expect(Object.values(await airs(ctx, id))).toEqual([-4, -6, -10, -10, -10, -10, -10]);
});

test('a reader of some days does not wait for decades, and is told what is stored now', async () => {
	const { ctx, id } = await lakeWithSource();
	await bring(ctx, id, '2027-01-03', about(-10, 24));
	const before = await listWeather(ctx, id, '2027-01-01', '2027-01-31');
	expect(await joinedMeanwhile(ctx, id, '2027-01-01', '2027-01-31')).toBeNull();
	// Weather turns out warmer, and a century has to be joined anew: nobody has begun with it yet.
	await sql`UPDATE source_hour SET air_degC = air_degC + 12`.execute(ctx.db);
	await markForJoining(ctx.db, id, '1927-01-01', '2027-01-31');
	const days = await listWeather(ctx, id, '2027-01-01', '2027-01-31');
	expect(days.map(({ on }) => on)).toEqual(before.map(({ on }) => on));
	expect(days.at(-1)).toMatchObject({ on: '2027-01-03', air_degC: 2, source: 'observed' });
	const { rows } = await sql`SELECT * FROM rejoin`.execute(ctx.db);
	expect(rows).toHaveLength(1);
	// Who reads all of it waits, and finds the same.
	expect((await listWeather(ctx, id)).slice(-days.length)).toEqual(days);
	expect(await joinedMeanwhile(ctx, id, '1926-01-01', '2027-01-31')).toBeNull();
});

test('a day that was imported without its decimal mark is left out, told, and back once it is mended', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const days = (slip: number) =>
		`date,tmean_c\n2027-01-01,-5.2\n2027-01-02,${slip}\n2027-01-03,-4.1\n`;
	await importWeather(ctx, id, inPieces(days(-73)));
	expect(await airs(ctx, id)).toEqual({
		'2027-01-01': -5.2,
		'2027-01-02': null,
		'2027-01-03': -4.1
	});
	const told = (await lakeView(ctx, id)).upkeep.sentences;
	expect(told).toMatchObject([{ code: 'weatherSlip' }]);
	expect(told[0]?.text).toMatch(/imported weather of 2 Jan is colder by more than 30 °C/);
	const words = wordsFor({ measure: 'imperial', mass: 'lb' });
	const [inFahrenheit] = (await lakeView(ctx, id, { words })).upkeep.sentences;
	expect(inFahrenheit?.text).toContain('by more than 54 °F');
	await importWeather(ctx, id, inPieces(days(-7.3)));
	expect((await airs(ctx, id))['2027-01-02']).toBe(-7.3);
	expect((await lakeView(ctx, id)).upkeep.sentences).toEqual([]);
});

test('an imported hour that no weather makes is left out of its day', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const rows = Array.from({ length: 72 }, (_, hour) => {
		const at = new Date(Date.parse('2027-01-01T00:00Z') + hour * 3_600_000).toISOString();
		return `${at.slice(0, 16)},${hour === 30 ? -73 : -5 - (hour % 5) / 10}`;
	});
	await importWeather(ctx, id, inPieces(`time,temperature_c\n${rows.join('\n')}\n`));
	expect((await airs(ctx, id))['2027-01-02']).toBeGreaterThan(-5.5);
	expect((await lakeView(ctx, id)).upkeep.sentences[0]?.text).toContain('2 Jan, 06:00');
});

test('an hour of a source that no weather makes is left out beside hours that came before it', async () => {
	const { ctx, id } = await lakeWithSource();
	// Each answer is judged by itself, and this one ends with it.
	await bring(ctx, id, '2027-01-03', [...about(-10, 47), -60]);
	await bring(ctx, id, '2027-01-05', about(-10, 24));
	expect((await airs(ctx, id))['2027-01-04']).toBeCloseTo(-10, 1);
});
