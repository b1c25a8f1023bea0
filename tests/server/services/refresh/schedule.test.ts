import { expect, onTestFinished, test } from 'vitest';
import {
	isRefreshOn,
	startSchedule
} from '../../../../src/lib/server/services/refresh/schedule.ts';
import { updateSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import { contextWithService, useSource } from '../../../support/invented-source.ts';

const NOW = '2027-01-20T12:20:00Z';

async function lake() {
	const { ctx, service } = await contextWithService(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	return { ctx, id, service };
}

test('a source that a person has just put to use is asked at once', async () => {
	const { ctx, id, service } = await lake();
	const schedule = startSchedule(ctx);
	onTestFinished(() => schedule.stop());
	await useSource(ctx, id);
	await expect.poll(() => service.asks.length, { timeout: 5000 }).toBe(2);
	expect((await listWeather(ctx, id)).length).toBeGreaterThan(20);
});

test('a source that was off is asked once it is on', async () => {
	const { ctx, id, service } = await lake();
	await useSource(ctx, id);
	await updateSource(ctx, 'invented-weather', { isOn: false });
	const schedule = startSchedule(ctx);
	onTestFinished(() => schedule.stop());
	await updateSource(ctx, 'invented-weather', { isOn: true });
	await expect.poll(() => service.asks.length, { timeout: 5000 }).toBe(2);
});

test('a schedule that has stopped asks nothing, nudged or not', async () => {
	const { ctx, id, service } = await lake();
	const schedule = startSchedule(ctx);
	await schedule.stop();
	await useSource(ctx, id);
	await new Promise((resolve) => setTimeout(resolve, 800));
	expect(service.asks).toEqual([]);
});

test.each([
	['off', false],
	[' OFF ', false],
	['on', true],
	['', true],
	[undefined, true]
])('FROSTLEDGER_REFRESH=%s', (value, isOn) => {
	expect(isRefreshOn({ FROSTLEDGER_REFRESH: value })).toBe(isOn);
});
