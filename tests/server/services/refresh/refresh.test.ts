import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import { stopRefreshing, whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import {
	NoSource,
	refreshState,
	startRefresh
} from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { refreshSource } from '../../../../src/lib/server/services/refresh/refresh-source.ts';
import { enqueueDue } from '../../../../src/lib/server/services/refresh/schedule.ts';
import { listLog } from '../../../../src/lib/server/services/sources/log.ts';
import { getSource, updateSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	measuredAsColdAs,
	orderOf,
	useSource,
	type Answer
} from '../../../support/invented-source.ts';
import { inPieces } from '../../../support/winter-csv.ts';

const NOW = '2027-01-20T12:20:00Z';

/** A lake on UTC that froze over on 1 December, with a source in use. */
async function lake(answer?: Answer, source = inventedSource()) {
	const { ctx, service, setNow } = await contextWithService(NOW, answer);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2026-12-01' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id, source);
	return { ctx, id, service, setNow };
}

async function refresh(ctx: Context, id: string) {
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	const [progress] = (await refreshState(ctx, id)).sources;
	if (!progress) throw new Error('the lake has no source');
	return progress;
}

const failed = (
	code: 'serverFailed' | 'notFound' | 'tooMany',
	retryAfter_s: number | null = null
) =>
	answered({
		outcome: 'failed',
		faults: [{ code, text: 'Invented Weather failed. Try again.' }],
		retryAfter_s
	});

test('the first refresh brings the winter from before freeze-up, and what is to come', async () => {
	const { ctx, id, service } = await lake();
	expect(await refresh(ctx, id)).toMatchObject({
		status: 'done',
		doneDays: 54,
		wantedDays: 54,
		sentences: []
	});
	const days = await listWeather(ctx, id);
	expect(days.at(0)?.on).toBe('2026-11-28');
	expect(days.at(-2)).toMatchObject({ on: '2027-01-19', air_degC: expect.closeTo(-8, 5) });
	expect(service.asks.map(({ ask }) => [ask.part, ask.from, ask.to])).toEqual([
		['history', '2026-12-29', '2027-01-20'],
		['forecast', '2027-01-20', '2027-01-30'],
		['history', '2026-11-28', '2026-12-28']
	]);
	const [newest] = await listLog(ctx);
	expect(newest).toMatchObject({ part: 'history', outcome: 'ok', stored: 744, calls: 1 });
});

test('progress is told while the winter comes in', async () => {
	const seen: number[] = [];
	const { ctx, id, service } = await lake();
	const answer = measuredAsColdAs(-8);
	service.answer = async (source, ask) => {
		const state = await refreshState(ctx, id);
		expect(state).toMatchObject({ isRunning: true, sources: [{ status: 'asking' }] });
		seen.push(state.sources[0]?.doneDays ?? NaN);
		return answer(source, ask);
	};
	const state = await startRefresh(ctx, id);
	expect(state).toMatchObject({ isRunning: true, sources: [{ source: 'invented-weather' }] });
	await whenIdle(ctx);
	expect(seen).toEqual([0, 23, 23]);
	expect((await refreshState(ctx, id)).isRunning).toBe(false);
});

test('three hours later only what is new is asked for', async () => {
	const { ctx, id, service, setNow } = await lake();
	await refresh(ctx, id);
	service.asks.length = 0;
	setNow('2027-01-20T15:40:00Z');
	expect(await enqueueDue(ctx)).toBe(1);
	await whenIdle(ctx);
	expect(service.asks.map(({ ask }) => [ask.part, ask.from])).toEqual([
		['history', '2027-01-19'],
		['forecast', '2027-01-20']
	]);
	expect(await enqueueDue(ctx)).toBe(0);
});

test('what was broken off is gone on with', async () => {
	const { ctx, id, service, setNow } = await lake();
	const answer = service.answer;
	service.answer = (source, ask) =>
		ask.to < '2027-01-01' ? failed('serverFailed') : answer(source, ask);
	expect(await refresh(ctx, id)).toMatchObject({ status: 'failed', doneDays: 23, wantedDays: 54 });
	expect((await listWeather(ctx, id)).at(0)?.on).toBe('2026-12-29');
	service.answer = answer;
	service.asks.length = 0;
	setNow('2027-01-20T12:40:00Z');
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done' });
	expect(service.asks.at(-1)?.ask).toMatchObject({ from: '2026-11-28', to: '2026-12-28' });
	expect((await listWeather(ctx, id)).at(0)?.on).toBe('2026-11-28');
});

test('a failure is told in a sentence, logged, and tried again after a wait that grows', async () => {
	const { ctx, id, service, setNow } = await lake(() => failed('serverFailed'));
	await refresh(ctx, id);
	const first = await getSource(ctx, 'invented-weather');
	expect(first.failures).toBeGreaterThan(0);
	expect((await listLog(ctx, { onlyFaults: true }))[0]).toMatchObject({
		outcome: 'failed',
		faults: [{ code: 'serverFailed', text: 'Invented Weather failed. Try again.' }]
	});
	service.asks.length = 0;
	setNow('2027-01-20T12:24:00Z');
	expect(await enqueueDue(ctx)).toBe(0);
	setNow('2027-01-20T13:20:00Z');
	expect(await enqueueDue(ctx)).toBe(1);
	await whenIdle(ctx);
	const second = await getSource(ctx, 'invented-weather');
	expect(second.failures).toBeGreaterThan(first.failures);
	service.answer = measuredAsColdAs(-8);
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done' });
	expect(await getSource(ctx, 'invented-weather')).toMatchObject({
		failures: 0,
		waitsUntilAt: null
	});
});

test('what fails for one lake alone does not keep others from being asked', async () => {
	const { ctx, id, service } = await lake(() => failed('notFound'));
	const other = await inventedLake(ctx, { name: 'Other', timeZone: 'Etc/UTC' });
	await orderOf(ctx, other.id, ['csv', 'invented-weather']);
	expect(await refresh(ctx, id)).toMatchObject({ status: 'failed' });
	expect(await getSource(ctx, 'invented-weather')).toMatchObject({
		failures: 0,
		waitsUntilAt: null
	});
	service.answer = measuredAsColdAs(-8);
	expect(await enqueueDue(ctx)).toBe(1);
	await whenIdle(ctx);
	expect((await listWeather(ctx, other.id)).length).toBeGreaterThan(20);
});

test('while it failed, what was known before still stands', async () => {
	const { ctx, id, service, setNow } = await lake();
	await refresh(ctx, id);
	const before = await listWeather(ctx, id);
	service.answer = () => failed('serverFailed');
	setNow('2027-01-21T12:20:00Z');
	expect(await refresh(ctx, id)).toMatchObject({ status: 'failed' });
	expect(await listWeather(ctx, id)).toEqual(before);
});

test('Retry-After is kept to, by people too', async () => {
	const { ctx, id, service, setNow } = await lake(() => failed('tooMany', 1800));
	await refresh(ctx, id);
	const asked = service.asks.length;
	expect(asked).toBe(1);
	setNow('2027-01-20T12:40:00Z');
	const progress = await refresh(ctx, id);
	expect(progress.status).toBe('notAsked');
	expect(progress.sentences.join()).toContain('asked to be left alone until 2027-01-20 12:50 UTC');
	expect(service.asks).toHaveLength(asked);
	service.answer = measuredAsColdAs(-8);
	setNow('2027-01-20T12:51:00Z');
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done' });
});

test('never more calls than the daily limit, and on with the next day', async () => {
	const source = inventedSource({ limits: { perDay: 3, minInterval_min: 0 } });
	const { ctx, id, service, setNow } = await lake(undefined, source);
	const progress = await refresh(ctx, id);
	expect(progress).toMatchObject({ status: 'notAsked', doneDays: 23 });
	expect(progress.sentences.join()).toContain('allows 3 calls a day and 2 are used');
	expect(service.asks).toHaveLength(2);
	expect(progress.nextAt).toEqual(new Date('2027-01-21T00:05:00Z'));
	setNow('2027-01-20T23:50:00Z');
	await refresh(ctx, id);
	expect(service.asks).toHaveLength(2);
	setNow('2027-01-21T00:06:00Z');
	await enqueueDue(ctx);
	await whenIdle(ctx);
	expect(service.asks).toHaveLength(4);
});

test('an answer that still holds is not asked for again', async () => {
	const { ctx, id, service, setNow } = await lake();
	await refresh(ctx, id);
	const asked = service.asks.length;
	setNow('2027-01-20T12:25:00Z');
	const progress = await refresh(ctx, id);
	expect(progress.status).toBe('notAsked');
	expect(progress.sentences.join()).toContain('holds until 2027-01-20 12:30 UTC');
	expect(service.asks).toHaveLength(asked);
	setNow('2027-01-20T12:31:00Z');
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done' });
});

test('a source that was changed is asked anew at once', async () => {
	const { ctx, id, service, setNow } = await lake();
	await refresh(ctx, id);
	const asked = service.asks.length;
	setNow('2027-01-20T12:21:00Z');
	await updateSource(ctx, 'invented-weather', { source: inventedSource({ name: 'Renamed' }) });
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done', name: 'Renamed' });
	expect(service.asks.length).toBeGreaterThan(asked);
});

test('validators are kept, and an unchanged answer leaves the forecast as old as it is', async () => {
	const validators = { etag: '"one"', lastModified: null, of: 'address' };
	const { ctx, id, service, setNow } = await lake(measuredAsColdAs(-8, { validators }));
	await refresh(ctx, id);
	service.asks.length = 0;
	service.answer = () => answered({ outcome: 'unchanged' });
	setNow('2027-01-20T18:00:00Z');
	expect(await refresh(ctx, id)).toMatchObject({ status: 'done' });
	expect(service.asks.map(({ ask }) => ask.validators)).toEqual([validators, validators]);
	expect((await listLog(ctx))[0]).toMatchObject({ outcome: 'unchanged', stored: 0 });
});

test('one lake after the other is asked of a source, another source meanwhile', async () => {
	const { ctx, id, service } = await lake();
	const other = await inventedLake(ctx, { name: 'Other', timeZone: 'Etc/UTC' });
	const second = inventedSource({ id: 'second-weather', name: 'Second Weather' });
	await useSource(ctx, other.id, second, ['invented-weather', 'second-weather']);
	const open = new Map<string, number>();
	const most = new Map<string, number>();
	let together = 0;
	const answer = service.answer;
	service.answer = async (source, ask) => {
		const now = (open.get(source.id) ?? 0) + 1;
		open.set(source.id, now);
		most.set(source.id, Math.max(most.get(source.id) ?? 0, now));
		together = Math.max(
			together,
			[...open.values()].reduce((sum, count) => sum + count)
		);
		await new Promise((resolve) => setTimeout(resolve, 5));
		open.set(source.id, now - 1);
		return answer(source, ask);
	};
	await Promise.all([startRefresh(ctx, id), startRefresh(ctx, other.id)]);
	await whenIdle(ctx);
	expect(most).toEqual(
		new Map([
			['invented-weather', 1],
			['second-weather', 1]
		])
	);
	expect(together).toBe(2);
});

test('what waits is not put into the line twice', async () => {
	const { ctx, id, service } = await lake();
	await Promise.all([startRefresh(ctx, id), startRefresh(ctx, id), startRefresh(ctx, id)]);
	await enqueueDue(ctx);
	await whenIdle(ctx);
	expect(service.asks).toHaveLength(3);
});

test('the end of the server breaks a refresh off, and counts it for no failure', async () => {
	const { ctx, id, service } = await lake();
	service.answer = async (_source, { signal }) => {
		await new Promise((resolve) => signal?.addEventListener('abort', resolve));
		return answered({ outcome: 'failed', faults: [{ code: 'stopped', text: 'Stopped.' }] });
	};
	await startRefresh(ctx, id);
	await new Promise((resolve) => setTimeout(resolve, 20));
	await stopRefreshing(ctx);
	expect(service.asks).toHaveLength(1);
	expect(await listLog(ctx)).toEqual([]);
	expect(await getSource(ctx, 'invented-weather')).toMatchObject({ failures: 0 });
});

test('a lake without a source, or with one that is off, says what to do', async () => {
	const { ctx, id } = await lake();
	const bare = await inventedLake(ctx, { name: 'Bare' });
	await expect(startRefresh(ctx, bare.id)).rejects.toThrow(NoSource);
	await updateSource(ctx, 'invented-weather', { isOn: false });
	await expect(startRefresh(ctx, id)).rejects.toThrow('choose one first');
	expect(await enqueueDue(ctx)).toBe(0);
});

test('a source that reads in °F beside a CSV is told of, and trusted no more for it', async () => {
	const { ctx, id } = await lake(measuredAsColdAs(-8 * 1.8 + 32));
	const rows = Array.from(
		{ length: 30 },
		(_, day) => `2026-12-${String(day + 1).padStart(2, '0')},-8`
	);
	await importWeather(ctx, id, inPieces(`date,tmean_c\n${rows.join('\n')}\n`));
	const { status, sentences } = await refresh(ctx, id);
	expect(status).toBe('done');
	expect(sentences.join()).toContain('reads 26 °C warmer than your CSV: is it °F?');
});

test('between one lake and the next of a source there is a breath, and none after the last', async () => {
	const { ctx, id, service } = await lake();
	for (const name of ['Second', 'Third']) {
		const other = await inventedLake(ctx, { name, timeZone: 'Etc/UTC' });
		await orderOf(ctx, other.id, ['csv', 'invented-weather']);
	}
	expect(await refreshSource(ctx, 'invented-weather')).toBe(3);
	await whenIdle(ctx);
	expect(service.waits_ms).toEqual([1000, 1000]);
	await refresh(ctx, id);
	expect(service.waits_ms).toHaveLength(2);
});

test.each([
	[-16, '8 °C colder'],
	[-1.6, '7 °C warmer']
])('a source that tells its last days anew at %s °C is told of', async (air_degC, far) => {
	const { ctx, id, service, setNow } = await lake();
	await refresh(ctx, id);
	service.answer = measuredAsColdAs(-8.5);
	setNow('2027-01-20T15:40:00Z');
	expect((await refresh(ctx, id)).sentences).toEqual([]);
	service.answer = measuredAsColdAs(air_degC);
	setNow('2027-01-20T18:40:00Z');
	const { status, sentences } = await refresh(ctx, id);
	expect(status).toBe('done');
	expect(sentences.join()).toMatch(/Invented Weather tells \d+ hours/);
	expect(sentences.join()).toContain(far);
});
