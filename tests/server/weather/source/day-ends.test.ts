import { expect, test } from 'vitest';
import { judge } from '#lib/server/weather/source/checks/judge.ts';
import { mapping as mappingSchema, type Mapping } from '#lib/server/weather/source/contract.ts';
import { mapAnswer } from '#lib/server/weather/source/read/map-answer.ts';

const TOKYO = { timeZone: 'Asia/Tokyo', from: '2026-01-15', to: '2026-01-25' };
const CHICAGO = { ...TOKYO, timeZone: 'America/Chicago' };
type Zone = Mapping['time']['zone'];

/** The days that count as observed and as forecast at an instant. */
async function daysAt(now: string, zone: Zone, place = TOKYO, suffix = '') {
	const mapping = mappingSchema.parse({
		layout: 'rows',
		rows: '$[*]',
		step: 'daily',
		time: { path: '$.on', form: 'iso', zone, stamp: 'start' },
		values: { air: { path: '$.air', unit: '°C' } }
	});
	const json = [18, 19, 20, 21].map((day) => ({ on: `2026-01-${day}${suffix}`, air: -day / 2 }));
	const found = await mapAnswer(mapping, { json, table: null }, place);
	const at = new Date(now);
	const ask = { ...place, longitude: 140, now: at };
	const of = (part: 'history' | 'forecast') =>
		judge({ mapping, part: 'both', reach: {} }, { ...ask, part }, found, at).days.map(({ on }) =>
			Number(on.slice(8))
		);
	return { history: of('history'), forecast: of('forecast') };
}

test('a day told in UTC is observed once it is over in UTC, though it be tomorrow at the lake', async () => {
	const at = (now: string) => daysAt(now, 'utc');
	// 05:00 on the 21st in Tokyo: the 20th goes on in UTC for four more hours.
	expect(await at('2026-01-20T20:00:00Z')).toEqual({ history: [18, 19], forecast: [20, 21] });
	expect(await at('2026-01-20T23:59:59Z')).toEqual({ history: [18, 19], forecast: [20, 21] });
	expect(await at('2026-01-21T00:00:00Z')).toEqual({ history: [18, 19, 20], forecast: [21] });
});

test('days of the lake itself are over at its own midnight', async () => {
	expect(await daysAt('2026-01-20T14:59:59Z', 'lake')).toMatchObject({ history: [18, 19] });
	expect(await daysAt('2026-01-20T15:00:00Z', 'lake')).toMatchObject({ history: [18, 19, 20] });
});

test('days of a named zone, and those that carry an offset, go by it', async () => {
	const oslo = { name: 'Europe/Oslo' };
	expect((await daysAt('2026-01-20T22:59:00Z', oslo)).history).toEqual([18, 19]);
	expect((await daysAt('2026-01-20T23:00:00Z', oslo)).history).toEqual([18, 19, 20]);
	const withOffset = (now: string) => daysAt(now, 'offset', TOKYO, 'T00:00:00-06:00');
	expect((await withOffset('2026-01-21T05:59:00Z')).history).toEqual([18, 19]);
	expect((await withOffset('2026-01-21T06:00:00Z')).history).toEqual([18, 19, 20]);
});

test('west of Greenwich a day waits for the lake’s own midnight as well', async () => {
	expect((await daysAt('2026-01-21T05:00:00Z', 'utc', CHICAGO)).history).toEqual([18, 19]);
	expect((await daysAt('2026-01-21T06:00:00Z', 'utc', CHICAGO)).history).toEqual([18, 19, 20]);
});

test('a stamp at the lake’s midnight is a day of the lake', async () => {
	const json = [{ on: '2026-01-19T15:00:00Z', air: -8 }];
	const mapping = mappingSchema.parse({
		layout: 'rows',
		rows: '$[*]',
		step: 'daily',
		time: { path: '$.on', form: 'iso', zone: 'utc', stamp: 'start' },
		values: { air: { path: '$.air', unit: '°C' } }
	});
	const { dayEnds_s } = await mapAnswer(mapping, { json, table: null }, TOKYO);
	expect([...dayEnds_s]).toEqual([['2026-01-20', Date.parse('2026-01-20T15:00:00Z') / 1000]]);
});
