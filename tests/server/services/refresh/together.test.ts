import { expect, test } from 'vitest';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { asOneSpan } from '../../../../src/lib/server/services/refresh/together.ts';
import { interval_min } from '../../../../src/lib/server/services/refresh/allowance.ts';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { listLog } from '../../../../src/lib/server/services/sources/log.ts';
import { getSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import type { WeatherSource } from '../../../../src/lib/server/weather/source/contract.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	hoursFrom,
	inventedSource,
	measuredAsColdAs,
	useSource
} from '../../../support/invented-source.ts';

const NOW = '2027-01-20T12:20:00Z';

/** An invented service whose one address tells past and future. */
function both(chunk_d = 60): WeatherSource {
	const [call] = inventedSource().calls;
	if (!call) throw new Error('the invented source has no call');
	return inventedSource({ calls: [{ ...call, part: 'both', chunk_d, reach: { ahead_d: 10 } }] });
}

async function lake(source = both()) {
	const { ctx, service, setNow } = await contextWithService(NOW, measuredAsColdAs(-8));
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id, source);
	const refresh = async () => {
		service.asks.length = 0;
		await startRefresh(ctx, id);
		await whenIdle(ctx);
		return service.asks.map(({ ask, isBoth }) => [isBoth ? 'both' : ask.part, ask.from, ask.to]);
	};
	return { ctx, id, service, setNow, refresh };
}

test('a source whose one call serves both parts is asked once, and both are stored', async () => {
	const { ctx, id, refresh, setNow } = await lake();
	expect(await refresh()).toEqual([['both', '2026-12-21', '2027-01-30']]);
	expect((await listWeather(ctx, id)).length).toBe(31);
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep).toMatchObject({ isForecastUsed: true, forecastTo: '2027-01-30', sentences: [] });
	expect(await getSource(ctx, 'invented-weather')).toMatchObject({ callsToday: 1 });
	const log = await listLog(ctx);
	expect(log.map(({ part, calls }) => [part, calls])).toEqual([
		['forecast', 0],
		['history', 1]
	]);
	setNow('2027-01-20T15:40:00Z');
	expect(await refresh()).toEqual([['both', '2027-01-19', '2027-01-30']]);
	expect(await getSource(ctx, 'invented-weather')).toMatchObject({ callsToday: 2 });
});

test('what is too long for one call is asked in two, and a wait between is kept to', async () => {
	const { refresh } = await lake(both(31));
	expect((await refresh()).map(([part]) => part)).toEqual(['history', 'forecast']);
	const source = both(31);
	const past = { from: '2027-01-01', to: '2027-01-20' };
	const ahead = { from: '2027-01-20', to: '2027-01-30' };
	expect(asOneSpan(source, past, ahead)?.whole).toEqual({ from: '2027-01-01', to: '2027-01-30' });
	expect(asOneSpan(source, { ...past, from: '2026-12-30' }, ahead)).toBeNull();
	expect(asOneSpan(source, { ...past, to: '2027-01-19' }, ahead)).toBeNull();
	expect(asOneSpan(inventedSource(), past, ahead)).toBeNull();
	expect(asOneSpan(source, past, null)).toBeNull();
});

test('a call that answers both counts once against the daily limit', () => {
	const limits = { perDay: 100, minInterval_min: 0 };
	const one = interval_min({ ...both(), limits }, 40);
	expect(one).toBeCloseTo(interval_min({ ...inventedSource(), limits }, 20), 6);
});

test('a failure is told once, and of both parts', async () => {
	const { ctx, service, refresh } = await lake();
	service.answer = () =>
		answered({ outcome: 'failed', faults: [{ code: 'serverFailed', text: 'It failed.' }] });
	expect(await refresh()).toHaveLength(1);
	const log = await listLog(ctx);
	expect(log.map(({ part, outcome }) => [part, outcome])).toEqual([
		['forecast', 'failed'],
		['history', 'failed']
	]);
});

test.each([
	['says nothing of its age', false],
	['says that it is new each time', true]
])('what was forecast in a page that %s does not become observed', async (_, isIssueTold) => {
	const { ctx, id, service, setNow, refresh } = await lake();
	const air = Array.from({ length: 20 * 24 }, (_, at) => -10 + 3 * Math.sin(at / 5) + at / 100);
	const page = hoursFrom('2027-01-15T00:00:00Z', air);
	service.answer = (_source, { part, now }) => {
		const isOver = (at_s: number) => at_s + 3600 <= now.getTime() / 1000;
		const hours = page.filter(({ at_s }) => isOver(at_s) === (part === 'history'));
		return answered({ hours, issuedAt: now, isIssueTold });
	};
	await refresh();
	const lastOn = async () =>
		(await listWeather(ctx, id)).findLast(({ air_degC }) => air_degC !== null)?.on;
	expect(await lastOn()).toBe('2027-01-19');
	setNow('2027-01-23T12:20:00Z');
	await refresh();
	expect(await lastOn()).toBe('2027-01-19');
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep).toMatchObject({ isForecastUsed: false, forecastAge_h: 72 });
});

test('what was measured beside a forecast that is not renewed yet stays observed', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	const air = Array.from({ length: 20 * 24 }, (_, at) => -10 + 3 * Math.sin(at / 5) + at / 100);
	const page = hoursFrom('2027-01-15T00:00:00Z', air);
	service.answer = (_source, { part, now }) => {
		const isOver = (at_s: number) => at_s + 3600 <= now.getTime() / 1000;
		const hours = page.filter(({ at_s }) => isOver(at_s) === (part === 'history'));
		const told = hours.map((hour) =>
			part === 'history' ? { ...hour, air_degC: (hour.air_degC ?? 0) + 0.3 } : hour
		);
		return answered({ hours: told, issuedAt: now });
	};
	await refresh();
	setNow('2027-01-21T06:20:00Z');
	await refresh();
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep.lastObservedAt).toEqual(new Date('2027-01-21T06:00:00Z'));
});

test('a part that could not use what came gets it in full the next time', async () => {
	const { service, refresh, setNow } = await lake();
	const validators = { etag: '"one"', lastModified: null, of: 'address' };
	const full = measuredAsColdAs(-8, { validators });
	service.answer = (source, ask) =>
		ask.part === 'history'
			? full(source, ask)
			: answered({ outcome: 'failed', faults: [{ code: 'nothingMapped', text: 'Nothing.' }] });
	await refresh();
	service.answer = full;
	setNow('2027-01-20T15:40:00Z');
	await refresh();
	expect(service.asks[0]?.ask.validators).toBeNull();
	setNow('2027-01-20T19:40:00Z');
	await refresh();
	expect(service.asks[0]?.ask.validators).toEqual(validators);
});
