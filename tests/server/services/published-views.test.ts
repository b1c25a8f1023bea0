import { expect, test } from 'vitest';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../src/lib/server/services/refresh/refresh-lake.ts';
import { enqueueDue } from '../../../src/lib/server/services/refresh/schedule.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	contextWithService,
	measuredAsColdAs,
	orderOf,
	useSource
} from '../../support/invented-source.ts';
import { inPieces } from '../../support/winter-csv.ts';

const NOW = '2027-01-20T12:20:00Z';

/** A lake that has been refreshed and looked at; then its source tells colder weather. */
async function lake() {
	const { ctx, service, setNow } = await contextWithService(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2026-12-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id);
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	setNow('2027-01-22T15:58:00Z');
	const before = await lakeView(ctx, id);
	service.answer = measuredAsColdAs(-20);
	setNow('2027-01-22T16:00:00Z');
	return { ctx, id, service, setNow, before };
}

async function keepUp({ ctx }: Awaited<ReturnType<typeof lake>>) {
	expect(await enqueueDue(ctx)).toBe(1);
	await whenIdle(ctx);
}

test('while an estimate is made of what the schedule brought, the one before stands', async () => {
	const it = await lake();
	await keepUp(it);
	const meanwhile = await lakeView(it.ctx, it.id);
	expect(meanwhile.outlook).toBe(it.before.outlook);
	expect(meanwhile.upkeep).toEqual(it.before.upkeep);
	await expect
		.poll(async () => (await lakeView(it.ctx, it.id)).asOf, { timeout: 10_000 })
		.toBe('2027-01-21');
});

test('while the schedule is still bringing it in, nothing is made of the half of it', async () => {
	const it = await lake();
	const seen: unknown[] = [];
	const answer = it.service.answer;
	it.service.answer = async (source, ask) => {
		seen.push((await lakeView(it.ctx, it.id)).outlook === it.before.outlook);
		return answer(source, ask);
	};
	await keepUp(it);
	expect(seen).toEqual([true, true]);
});

test('after a minute nothing older stands in any more', async () => {
	const it = await lake();
	await keepUp(it);
	it.setNow('2027-01-22T16:01:01Z');
	expect((await lakeView(it.ctx, it.id)).asOf).toBe('2027-01-21');
});

test('a view that was answered long ago stands in for nothing', async () => {
	const it = await lake();
	it.setNow('2027-01-22T16:04:00Z');
	await keepUp(it);
	expect((await lakeView(it.ctx, it.id)).asOf).toBe('2027-01-21');
});

test('who asked for a refresh sees what it brought', async () => {
	const it = await lake();
	await startRefresh(it.ctx, it.id);
	await whenIdle(it.ctx);
	expect((await lakeView(it.ctx, it.id)).asOf).toBe('2027-01-21');
});

test.each([
	[
		'a reading',
		async ({ ctx, id }: Awaited<ReturnType<typeof lake>>) => {
			const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.2 }] };
			await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
		}
	],
	[
		'a file of weather',
		async ({ ctx, id }: Awaited<ReturnType<typeof lake>>) => {
			await importWeather(ctx, id, inPieces('date,tmean_c\n2027-01-05,-30\n'));
		}
	],
	[
		'another order of trust',
		async ({ ctx, id }: Awaited<ReturnType<typeof lake>>) => {
			await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: false });
		}
	]
])('%s is answered at once, never by an older view', async (_, change) => {
	const it = await lake();
	await keepUp(it);
	await change(it);
	const view = await lakeView(it.ctx, it.id);
	expect(view.asOf).toBe('2027-01-21');
	expect(view.outlook).not.toBe(it.before.outlook);
});

test('a view that was made by a clock that was ahead stands in for nothing', async () => {
	const it = await lake();
	it.setNow('2027-01-22T17:00:00Z');
	await lakeView(it.ctx, it.id);
	await keepUp(it);
	it.setNow('2027-01-22T16:20:00Z');
	const { asOf, standsIn } = await lakeView(it.ctx, it.id);
	expect({ asOf, standsIn }).toEqual({ asOf: '2027-01-21', standsIn: undefined });
});
