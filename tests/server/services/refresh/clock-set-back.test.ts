import { expect, test } from 'vitest';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { enqueueDue } from '../../../../src/lib/server/services/refresh/schedule.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import {
	readSourceState,
	updateSourceState
} from '../../../../src/lib/server/storage/source-states.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	measuredAsColdAs,
	useSource
} from '../../../support/invented-source.ts';

const TRUE_NOW = '2027-01-20T12:20:00Z';

/** A lake whose server refreshed, at a cold forecast, with a clock that was ahead. */
async function refreshedAhead(falseNow: string, minInterval_min = 10) {
	const { ctx, service, setNow } = await contextWithService(falseNow, measuredAsColdAs(-20));
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2026-12-01' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id, inventedSource({ limits: { perDay: 1000, minInterval_min } }));
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	const forecastFor = measuredAsColdAs(-20);
	const measured = measuredAsColdAs(-2);
	service.answer = (source, ask) => (ask.part === 'history' ? measured : forecastFor)(source, ask);
	return { ctx, id, service, setNow };
}

test.each(['2027-01-20T14:20:00Z', '2027-01-21T08:20:00Z', '2027-01-22T12:20:00Z'])(
	'what was taken for observed by a clock that showed %s is let go once it is set right',
	async (falseNow) => {
		const { ctx, id, setNow } = await refreshedAhead(falseNow, 1440);
		setNow(TRUE_NOW);
		expect(await enqueueDue(ctx)).toBe(1);
		await whenIdle(ctx);
		const { upkeep } = await lakeView(ctx, id);
		expect(upkeep.lastObservedAt?.toISOString()).toBe('2027-01-20T12:00:00.000Z');
		const hours = await ctx.db.selectFrom('source_hour').selectAll().execute();
		expect(Math.max(...hours.map(({ at_s }) => at_s + 3600)) * 1000).toBeLessThanOrEqual(
			Date.parse(TRUE_NOW)
		);
		const days = await listWeather(ctx, id);
		expect(days.at(-2)?.on).toBe('2027-01-19');
		const whole = days.slice(0, -1).map(({ air_degC }) => air_degC);
		expect(whole).toEqual(whole.map(() => expect.closeTo(-2, 5)));
		expect(await enqueueDue(ctx)).toBe(0);
	}
);

test('days that passed before the clock was set right are asked for anew, even after a kill', async () => {
	const { ctx, id, service, setNow } = await refreshedAhead('2027-02-01T12:20:00Z');
	setNow('2027-01-26T12:20:00Z');
	const answer = service.answer;
	service.answer = () =>
		answered({ outcome: 'failed', faults: [{ code: 'timeOut', text: 'No answer.' }] });
	await enqueueDue(ctx);
	await whenIdle(ctx);
	service.answer = answer;
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	const days = await listWeather(ctx, id);
	const between = days.filter(({ on }) => on >= '2027-01-20' && on <= '2027-01-25');
	expect(between.map(({ air_degC }) => air_degC)).toEqual(between.map(() => expect.closeTo(-2, 5)));
	expect(between).toHaveLength(6);
});

test('what is not to be asked until then by a clock that was ahead may be asked once it is right', async () => {
	const { ctx, service, setNow } = await refreshedAhead('2027-01-24T12:20:00Z');
	const ahead = '2027-01-24T18:00:00.000Z';
	await updateSourceState(ctx.db, 'invented-weather', { failures: 3, back_off_until_at: ahead });
	setNow(TRUE_NOW);
	service.asks.length = 0;
	await enqueueDue(ctx);
	await whenIdle(ctx);
	expect(service.asks.length).toBeGreaterThan(0);
	expect((await readSourceState(ctx.db, 'invented-weather')).failures).toBe(0);
});
