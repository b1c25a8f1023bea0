import { sql } from 'kysely';
import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import { updateLake } from '../../../../src/lib/server/services/lakes.ts';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { updateSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import type { WeatherSource } from '../../../../src/lib/server/weather/source/contract.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	contextWithService,
	inventedSource,
	measuredAsColdAs,
	orderOf,
	useSource,
	type FakeService
} from '../../../support/invented-source.ts';

const NOW = '2027-01-20T12:20:00Z';
const ID = 'invented-weather';

/** The invented source with its temperatures in another unit. */
function inUnit(unit: '°C' | '°F'): WeatherSource {
	const source = inventedSource();
	const calls = source.calls.map((call) => {
		const values = { ...call.mapping.values, air: { path: '$.hourly.air', unit } };
		return { ...call, mapping: { ...call.mapping, values } };
	});
	return { ...source, calls };
}

/** Tells about −20 °C when read as °C, and about −7 °C when read as what it is. */
const asRead: FakeService['answer'] = (source, ask) => {
	const isRight = source.calls.some(({ mapping }) => mapping.values.air?.unit === '°F');
	return measuredAsColdAs(isRight ? -7 : -20)(source, ask);
};

/** Two lakes on UTC, both read in the wrong unit. */
async function wronglyRead() {
	const { ctx, service } = await contextWithService(NOW, asRead);
	const one = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const other = await inventedLake(ctx, { name: 'Other', timeZone: 'Etc/UTC' });
	await useSource(ctx, one.id, inUnit('°C'));
	await orderOf(ctx, other.id, ['csv', ID]);
	const lakes = [one.id, other.id];
	await refresh(ctx, lakes);
	return { ctx, service, lakes };
}

async function refresh(ctx: Context, lakes: readonly string[]) {
	for (const id of lakes) await startRefresh(ctx, id);
	await whenIdle(ctx);
}

async function coldest(ctx: Context, lakes: readonly string[]) {
	const days = await Promise.all(lakes.map((id) => listWeather(ctx, id)));
	return days.map((of) => Math.min(...of.map(({ air_degC }) => air_degC ?? Infinity)));
}

async function rows(ctx: Context, table: string) {
	const { rows: found } = await sql<{ n: number }>`
		SELECT count(*) AS n FROM ${sql.table(table)}`.execute(ctx.db);
	return found[0]?.n;
}

const BROUGHT = ['source_hour', 'source_day', 'forecast_issue', 'forecast_hour', 'fetch_state'];

test('a corrected mapping forgets what was read wrongly, of every lake, and reads it anew', async () => {
	const { ctx, lakes } = await wronglyRead();
	expect((await coldest(ctx, lakes)).every((air) => air < -19)).toBe(true);
	await updateSource(ctx, ID, { source: inUnit('°F') });
	for (const table of BROUGHT) expect(await rows(ctx, table), table).toBe(0);
	expect(await coldest(ctx, lakes)).toEqual([Infinity, Infinity]);
	await refresh(ctx, lakes);
	for (const air of await coldest(ctx, lakes)) expect(air).toBeCloseTo(-7, 0);
});

test.each<[what: string, change: (call: WeatherSource['calls'][number]) => object]>([
	['address', ({ address }) => ({ address: `${address}&v=2` })],
	['headers', () => ({ headers: { 'x-units': 'si' } })],
	['part', () => ({ part: 'both' })],
	['times', ({ mapping }) => ({ mapping: { ...mapping, time: { ...mapping.time, zone: 'lake' } } })]
])('another %s forgets as well', async (_, change) => {
	const { ctx } = await wronglyRead();
	const { calls, ...same } = inUnit('°C');
	const changed = calls.map((call, at) => (at === 0 ? { ...call, ...change(call) } : call));
	await updateSource(ctx, ID, { source: { ...same, calls: changed as WeatherSource['calls'] } });
	expect(await rows(ctx, 'source_hour')).toBe(0);
});

test('another name, limit, order of fields or one more address keeps what was brought', async () => {
	const { ctx, lakes } = await wronglyRead();
	const before = await rows(ctx, 'source_hour');
	const { calls, ...same } = inUnit('°C');
	const turned = calls.map((call) => Object.fromEntries(Object.entries(call).toReversed()));
	const more = { ...calls[0], address: 'https://weather.invalid/more?at={latitude}' };
	const limits = { perDay: 7, minInterval_min: 1 };
	const source = { ...same, name: 'Renamed', limits, calls: [...turned, more] } as WeatherSource;
	await updateSource(ctx, ID, { source });
	expect(await rows(ctx, 'source_hour')).toBe(before);
	expect((await coldest(ctx, lakes))[0]).toBeLessThan(-19);
});

test.each<[what: string, change: (ctx: Context, lake: string) => Promise<unknown>]>([
	['source is corrected', (ctx) => updateSource(ctx, ID, { source: inUnit('°F') })],
	['lake is moved', (ctx, id) => updateLake(ctx, id, { latitude: 30 })]
])('an answer that is under way while its %s is not stored', async (_, change) => {
	const { ctx, service } = await contextWithService(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id, inUnit('°C'));
	let isChanged = false;
	service.answer = async (source, ask) => {
		const isWrong =
			ask.latitude !== 30 && source.calls.every(({ mapping }) => mapping.values.air?.unit === '°C');
		const answer = await measuredAsColdAs(isWrong ? -20 : -7)(source, ask);
		if (!isChanged) {
			isChanged = true;
			await change(ctx, id);
		}
		return answer;
	};
	await refresh(ctx, [id]);
	const [air] = await coldest(ctx, [id]);
	expect(air).toBeCloseTo(-7, 0);
	expect(service.asks.slice(1).map(({ ask }) => ask.part)).toEqual(['history', 'forecast']);
	expect(service.asks[1]?.ask.validators).toBeNull();
});
