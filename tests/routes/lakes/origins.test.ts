import { expect, test } from 'vitest';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { getLakeOrder } from '../../../src/lib/server/services/sources/lake-order.ts';
import { listWeather } from '../../../src/lib/server/services/weather-csv.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/weather/+page.server.ts';
import { formEvent, outcomeOf } from '../../support/form-event.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	measuredAsColdAs,
	orderOf,
	useSource
} from '../../support/invented-source.ts';

const ID = 'invented-weather';

/** A lake that one source is asked for by station. */
async function lake() {
	const station = { name: 'Ridge', latitude: 47.5, longitude: -38.2, elevation_m: 500 };
	const answer = measuredAsColdAs(-8, { station });
	const { ctx: context, service } = await contextWithService('2027-01-20T12:20:00Z', answer);
	const { id } = await inventedLake(context, { timeZone: 'Etc/UTC', elevation_m: 100 });
	await useSource(context, id, inventedSource({ limits: { perDay: 1000, minInterval_min: 0 } }));
	await orderOf(context, id, ['csv', ID], { station: 'R-7' });
	const at = (more: object = {}) => formEvent({ context, params: { lake: id }, ...more });
	const run = async (name: string, fields: Record<string, string> = {}) => {
		const outcome = await outcomeOf(actions[name as keyof typeof actions], at({ fields }));
		await whenIdle(context);
		return outcome.location;
	};
	return { context, service, id, at, run };
}

type Page = Awaited<ReturnType<typeof load>> & {
	origins: { id: string; station?: { higherBy_m: number }; lastObservedAge_h?: number }[];
};

test('the page tells where the weather comes from, and asks when it is wished', async () => {
	const { service, at, run } = await lake();
	expect(await run('refresh')).toBe('?done=asked#origins');
	expect(service.asks[0]?.ask.station).toBe('R-7');
	const page = (await load(at())) as Page;
	expect(page.origins.map(({ id }) => id)).toEqual(['csv', ID]);
	expect(page.origins[1]).toMatchObject({ station: { name: 'Ridge', higherBy_m: 400 } });
	expect(page).toMatchObject({ upkeep: { lastObservedAge_h: 0, isForecastUsed: true } });
});

test('trust and correction are changed, and the weather with them', async () => {
	const { context, id, run } = await lake();
	await run('refresh');
	const coldest = async () => (await listWeather(context, id))[0]?.air_degC ?? NaN;
	const corrected = await coldest();
	expect(await run('correct', { source: ID, on: 'no' })).toBe('?done=uncorrected#origins');
	expect(corrected - (await coldest())).toBeCloseTo(2.6, 6);
	expect(await run('move', { source: ID, way: 'up' })).toBe('?done=moved#origins');
	const order = await getLakeOrder(context, id);
	expect(order.map(({ kind }) => kind)).toEqual(['source', 'csv']);
});

test('a source that is no longer used comes back by undo as it was, with what it brought', async () => {
	const { context, id, at, run, service } = await lake();
	await run('refresh');
	await run('correct', { source: ID, on: 'no' });
	const before = await listWeather(context, id);
	const where = await run('unuse', { source: ID });
	expect(await listWeather(context, id)).toEqual([]);
	const query = where.slice(1).replace('#origins', '');
	const { removed } = (await load(at({ query }))) as { removed: Record<string, string> };
	// Nothing has to be asked anew for this.
	const faults = [{ code: 'serverFailed' as const, text: 'It failed.' }];
	service.answer = () => answered({ outcome: 'failed', faults });
	await outcomeOf(actions.use, at({ fields: removed }));
	await whenIdle(context);
	expect(await listWeather(context, id)).toEqual(before);
	const [, origin] = await getLakeOrder(context, id);
	expect(origin).toMatchObject({ station: 'R-7', correctsElevation: false });
});

test('earlier winters are offered where they are on record, and fetched', async () => {
	const { context, id, at, run } = await lake();
	await run('refresh');
	expect(await load(at())).toMatchObject({ earlierWinters: 0 });
	const record = winterInput.parse({ freezeUpOn: '2025-12-20', iceOutOn: '2026-01-31' });
	await saveSiteWinter(context, id, 'main', { winter: '2025-26', ...record });
	expect(await load(at())).toMatchObject({ earlierWinters: 1 });
	expect(await run('earlierWinters')).toBe('?done=earlier#origins');
	const days = await listWeather(context, id, '2025-10-01', '2026-06-01');
	expect([days.at(0)?.on, days.at(-1)?.on]).toEqual(['2025-12-17', '2026-01-31']);
});
