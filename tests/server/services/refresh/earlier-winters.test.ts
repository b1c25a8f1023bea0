import { expect, test } from 'vitest';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import {
	countEarlierWinters,
	NoSource,
	refreshState,
	startEarlierWinters,
	startRefresh
} from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { getSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { findLakeSourceRow } from '../../../../src/lib/server/storage/lake-sources.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	useSource
} from '../../../support/invented-source.ts';

const NOW = '2027-01-20T12:20:00Z';

/** A lake on UTC with three winters on record, the last of them this one. */
async function lake(source = inventedSource({ limits: { perDay: 1000, minInterval_min: 0 } })) {
	const { ctx, service, setNow } = await contextWithService(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	for (const [winter, freezeUpOn, iceOutOn] of [
		['2024-25', '2024-12-10', '2025-04-08'],
		['2025-26', '2025-12-20', null],
		['2026-27', '2026-12-28', null]
	] as const) {
		const record = winterInput.parse({ freezeUpOn, iceOutOn });
		await saveSiteWinter(ctx, id, 'main', { winter, ...record });
	}
	await useSource(ctx, id, source);
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	const before = await findLakeSourceRow(ctx.db, 1);
	const fetchEarlier = async () => {
		service.asks.length = 0;
		await startEarlierWinters(ctx, id);
		await whenIdle(ctx);
		const [progress] = (await refreshState(ctx, id)).sources;
		return { progress, spans: service.asks.map(({ ask }) => [ask.part, ask.from, ask.to]) };
	};
	return { ctx, id, service, setNow, before, fetchEarlier };
}

test('earlier winters come in chunks, from before freeze-up to ice-out or the winter’s end', async () => {
	const { ctx, id, before, fetchEarlier } = await lake();
	expect(await countEarlierWinters(ctx, id)).toBe(2);
	const { progress, spans } = await fetchEarlier();
	expect(progress).toMatchObject({ status: 'done', sentences: [] });
	expect(progress?.doneDays).toBe(progress?.wantedDays);
	expect(spans.every(([part]) => part === 'history')).toBe(true);
	expect(spans.at(-1)).toEqual(['history', '2024-12-07', '2025-01-06']);
	expect(spans.some(([, , to]) => to === '2025-04-08')).toBe(true);
	const days = new Set((await listWeather(ctx, id)).map(({ on }) => on));
	for (const on of ['2024-12-07', '2025-04-08', '2025-12-17', '2026-03-01', '2027-01-19']) {
		expect(days.has(on), on).toBe(true);
	}
	expect(days.has('2025-05-01')).toBe(false);
	// Keeping up goes on as it was.
	const { asked_from, next_at } = (await findLakeSourceRow(ctx.db, 1)) ?? {};
	expect({ asked_from, next_at }).toEqual({
		asked_from: before?.asked_from,
		next_at: before?.next_at
	});
});

test('what has been brought is not asked for again, and what was broken off is gone on with', async () => {
	const { service, fetchEarlier } = await lake();
	const answer = service.answer;
	let calls = 0;
	service.answer = (source, ask) =>
		++calls > 3
			? answered({ outcome: 'failed', faults: [{ code: 'serverFailed', text: 'It failed.' }] })
			: answer(source, ask);
	const broken = await fetchEarlier();
	expect(broken.progress).toMatchObject({ status: 'failed', sentences: ['It failed.'] });
	expect(broken.spans).toHaveLength(4);
	service.answer = answer;
	const { spans } = await fetchEarlier();
	expect(spans[0]).toEqual(broken.spans[3]);
	expect((await fetchEarlier()).spans).toEqual([]);
});

test('the daily limit is kept to, with what keeping up needs left over', async () => {
	const limits = { perDay: 20, minInterval_min: 0 };
	const { ctx, fetchEarlier, setNow } = await lake(inventedSource({ limits }));
	const first = await fetchEarlier();
	expect(first.progress).toMatchObject({ status: 'notAsked' });
	expect(first.progress?.sentences.join()).toMatch(/allows 20 calls a day.*kept for the weather/);
	const { callsToday } = await getSource(ctx, 'invented-weather');
	expect(callsToday).toBeLessThanOrEqual(20 - 8);
	setNow('2027-01-21T18:00:00Z');
	const second = await fetchEarlier();
	expect(second.spans.length).toBeGreaterThan(0);
});

test('a lake without a source has nobody to ask', async () => {
	const { ctx } = await lake();
	const bare = await inventedLake(ctx, { name: 'Bare' });
	expect(await countEarlierWinters(ctx, bare.id)).toBe(0);
	await expect(startEarlierWinters(ctx, bare.id)).rejects.toThrow(NoSource);
});
